"""What the register itself puts on the home page: duties, reports to finish, copies to mark and to label."""

from collections.abc import Iterable

from django.db.models import Exists, OuterRef, Q
from django.http import HttpRequest
from django.urls import reverse

from records import access, clock
from records.extensions import HomeCard, home_cards
from records.lost import GONE
from records.models import Duty, Item, Mark
from records.roles import CONSERVATOR, CURATOR, REGISTRAR, TECHNICIAN
from records.services.permissions import NOTICE
from records.waiting import wanted_for

SHOWN = 12


def _mine(request: HttpRequest, *roles: str) -> bool:
    return request.user.is_superuser or bool(access.roles_of(request.user) & set(roles))


def duties_due(request: HttpRequest) -> Iterable[HomeCard]:
    """Open duties of the person's roles, the nearest first."""
    today = clock.today()
    rows = Duty.objects.open().select_related("item")
    if not request.user.is_superuser:
        rows = rows.filter(role__in=access.roles_of(request.user))
    for duty in rows[:SHOWN]:
        when = "now" if duty.due_on <= today else "week" if duty.due_on <= today + NOTICE else "later"
        state = "blocked" if duty.due_on < today else "look" if when != "later" else "open"
        things = (duty.item.number,) if duty.item else ()
        yield HomeCard(duty.sentence, reverse("duty_done", args=[duty.pk]), when, state, duty.due_on, things=things)


def copies_waiting(request: HttpRequest) -> Iterable[HomeCard]:
    """Copies made here: those without a mark are marked first, those that are accepted get their label."""
    may_mark, may_label = _mine(request, TECHNICIAN, CONSERVATOR), _mine(request, CURATOR)
    if not may_mark and not may_label:
        return
    marks = Mark.objects.filter(item=OuterRef("pk"), purpose=Mark.Purpose.COPY, photo__isnull=False)
    rows = Item.objects.made_here().annotate(has_mark=Exists(marks.exclude(method=Mark.Method.INK)))
    unmarked = Q(has_mark=False) & ~Q(status__in=GONE)
    unlabelled = Q(label__signed_at__isnull=True) & ~Q(status=Item.Status.WORKSHOP)
    wanted = unmarked | unlabelled if may_mark and may_label else unmarked if may_mark else unlabelled
    for copy in rows.filter(wanted).select_related("label")[: SHOWN * 2]:
        yield from _cards_of_copy(copy, may_mark, may_label)


def _cards_of_copy(copy: Item, may_mark: bool, may_label: bool) -> Iterable[HomeCard]:
    if may_mark and not copy.has_mark and copy.status not in GONE:
        sentence = f"Mark copy {copy.number} and photograph the mark"
        yield HomeCard(sentence, copy.get_absolute_url(), "now", "blocked", things=(copy.number,))
    label = getattr(copy, "label", None)
    if may_label and copy.status != Item.Status.WORKSHOP and not (label and label.is_signed):
        sentence = f"Word and approve the label of {copy.number}"
        yield HomeCard(sentence, reverse("label_edit", args=[copy.number]), "week", things=(copy.number,))


def commissions_without_consent(request: HttpRequest) -> Iterable[HomeCard]:
    if not _mine(request, REGISTRAR):
        return
    waiting = {row.commission.number: row.commission for row in wanted_for(request) if not row.has_consent}
    for number, commission in waiting.items():
        sentence = f"Ask for the owner’s consent for {number}"
        yield HomeCard(sentence, commission.get_absolute_url(), "now", "blocked")


def originals_to_examine(request: HttpRequest) -> Iterable[HomeCard]:
    """What an original still needs of the conservator on the way to its mould, and after it."""
    if not _mine(request, CONSERVATOR):
        return
    for row in wanted_for(request):
        if step := _step_of(row):
            yield HomeCard(f"{step[0]}, for {row.commission.number}", step[1], "now", step[2])


def _step_of(row) -> tuple[str, str, str] | None:
    if not row.has_consent:
        return None
    number = row.item.number
    examine = reverse("condition_add", args=[number])
    if row.is_moulded:
        return None if row.is_begun_after else (f"Examine {number} after moulding", examine, "look")
    if row.has_mould:
        return None
    if row.risk_number is None:
        return f"Assess the risk of moulding {number}", reverse("risk_add", args=[number]), "open"
    if not row.is_assessed:
        return f"Sign risk assessment {row.risk_number} of {number}", reverse("risk", args=[row.risk_number]), "open"
    if row.is_refused or row.is_begun_before:
        return None
    return f"Examine {number} before moulding", examine, "open"


home_cards += [
    duties_due, originals_to_examine, copies_waiting, commissions_without_consent,
]  # fmt: skip
