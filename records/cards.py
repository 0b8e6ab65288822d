"""What the register itself puts on the home page: duties, reports to finish, copies to mark and to label."""

from collections.abc import Iterable
from datetime import timedelta

from django.http import HttpRequest
from django.urls import reverse

from records import access, clock
from records.extensions import HomeCard, home_cards
from records.models import Commission, ConditionReport, Duty, Item, Mark
from records.roles import CONSERVATOR, CURATOR, REGISTRAR, TECHNICIAN
from records.services.permissions import NOTICE
from records.waiting import wanted_originals

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
        yield HomeCard(duty.sentence, reverse("duty_done", args=[duty.pk]), when, state, duty.due_on)


def reports_to_finish(request: HttpRequest) -> Iterable[HomeCard]:
    if not _mine(request, CONSERVATOR):
        return
    rows = ConditionReport.objects.filter(signed_at__isnull=True).select_related("item").order_by("examined_on")
    for report in rows[:SHOWN]:
        sentence = f"Finish and sign condition report {report.number} of {report.item.number}"
        old = report.examined_on < clock.today() - timedelta(days=7)
        yield HomeCard(
            sentence, reverse("condition", args=[report.number]), "now" if old else "week", "look" if old else "open"
        )


def unmarked_copies(request: HttpRequest) -> Iterable[HomeCard]:
    if not _mine(request, TECHNICIAN, CONSERVATOR):
        return
    marked = Mark.objects.filter(purpose=Mark.Purpose.COPY, photo__isnull=False).exclude(method=Mark.Method.INK)
    gone = [Item.Status.LEFT, Item.Status.DESTROYED, Item.Status.LOST]
    for copy in Item.objects.made_here().exclude(pk__in=marked.values("item")).exclude(status__in=gone)[:SHOWN]:
        yield HomeCard(f"Mark copy {copy.number} and photograph the mark", copy.get_absolute_url(), "now", "blocked")


def labels_to_approve(request: HttpRequest) -> Iterable[HomeCard]:
    if not _mine(request, CURATOR):
        return
    for copy in (
        Item.objects.made_here().filter(label__signed_at__isnull=True).exclude(status=Item.Status.WORKSHOP)[:SHOWN]
    ):
        yield HomeCard(
            f"Word and approve the label of {copy.number}", reverse("label_edit", args=[copy.number]), "week"
        )


def commissions_without_consent(request: HttpRequest) -> Iterable[HomeCard]:
    if not _mine(request, REGISTRAR):
        return
    for commission in Commission.objects.filter(closed_on__isnull=True, consents__isnull=True)[:SHOWN]:
        yield HomeCard(
            f"Ask for the owner's consent for {commission.number}", commission.get_absolute_url(), "now", "blocked"
        )


def originals_to_examine(request: HttpRequest) -> Iterable[HomeCard]:
    """What an original still needs of the conservator on the way to its mould, and after it."""
    if not _mine(request, CONSERVATOR):
        return
    for row in wanted_originals()[: SHOWN * 2]:
        if step := _step_of(row):
            yield HomeCard(f"{step[0]}, for {row.commission.number}", step[1], "now", step[2])


def _step_of(row) -> tuple[str, str, str] | None:
    number = row.item.number
    examine = reverse("condition_add", args=[number])
    if row.is_moulded:
        return None if row.is_begun_after else (f"Examine {number} after moulding", examine, "look")
    if row.risk_number is None:
        return f"Assess the risk of moulding {number}", reverse("risk_add", args=[number]), "open"
    if not row.is_assessed:
        return f"Sign risk assessment {row.risk_number} of {number}", reverse("risk", args=[row.risk_number]), "open"
    if row.is_refused or row.is_begun_before:
        return None
    return f"Examine {number} before moulding", examine, "open"


home_cards += [
    duties_due, reports_to_finish, originals_to_examine, unmarked_copies, labels_to_approve,
    commissions_without_consent,
]  # fmt: skip
