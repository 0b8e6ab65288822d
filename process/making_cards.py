"""What waits between the baths on the home page: originals to mould, shells to make up, copies to inspect."""

from collections import defaultdict
from collections.abc import Iterable
from urllib.parse import urlencode

from django.http import HttpRequest
from django.urls import reverse

from process.drying_cards import drying_card, waiting_shells
from process.models import Inspection, MakingUp, Mould, Run
from process.summaries.copy_states import narrow, with_states
from records import access
from records.extensions import HomeCard, home_cards
from records.lost import GONE
from records.models import Item
from records.waiting import wanted_for

SHOWN = 12


def originals_to_mould(request: HttpRequest) -> Iterable[HomeCard]:
    """Allowed, assessed and examined: now it can be moulded."""
    if not access.may(request.user, "write", Mould):
        return
    for row in wanted_for(request):
        ready = row.has_consent and row.is_assessed and row.is_examined_before
        side = "reverse" if row.lacks_reverse else "obverse" if row.lacks_obverse else ""
        if not ready or row.is_refused or (row.has_mould and not (side and row.is_both_sides)):
            continue
        url = f"{reverse('mould_add')}?{urlencode({'of': row.item.number})}"
        what = f"the {side} of {row.item.number} too" if side else row.item.number
        yield HomeCard(f"Mould {what}, for {row.commission.number}", url)


def moulds_to_hang(request: HttpRequest) -> Iterable[HomeCard]:
    """Moulds of an open commission from which nothing was pulled yet: accepted first, then hung in a bath."""
    may_accept, may_plan = access.may(request.user, "write", Mould), access.may(request.user, "write", Run)
    unused = Mould.objects.filter(commission__closed_on__isnull=True, commission__isnull=False, pulls__isnull=True)
    unused = unused.filter(cathodes__isnull=True, fate=Mould.Fate.IN_STORE).select_related("item", "commission")
    for mould in unused[:SHOWN]:
        number, wanted = mould.item.number, mould.commission.number
        if mould.accepted_on is None and may_accept:
            yield HomeCard(f"Accept mould {number}, for {wanted}", reverse("mould_edit", args=[number]), "week")
        elif mould.accepted_on and may_plan:
            url = f"{reverse('run_add')}?{urlencode({'mould': number})}"
            yield HomeCard(f"Plan a run with mould {number}, for {wanted}", url, "week", things=(number,))


def shells_to_make_up(request: HttpRequest) -> Iterable[HomeCard]:
    """Kept shells of runs that ended well, those of one run together; a skinned core is first dried and closed."""
    if not access.may(request.user, "write", MakingUp):
        return
    by_run: dict[str, list[str]] = defaultdict(list)
    for waiting in waiting_shells()[: SHOWN * 2]:
        if waiting.shell.cathode.core_id:
            yield drying_card(request, waiting)
        elif waiting.shell.cathode.run.outcome in (Run.Outcome.GOOD, Run.Outcome.RESERVED):
            by_run[waiting.shell.cathode.run.number].append(waiting.shell.item.number)
    for run, numbers in by_run.items():
        url = f"{reverse('making_up_add')}?{urlencode({'shell': numbers}, doseq=True)}"
        yield HomeCard(f"Make up {' and '.join(numbers)} of {run}", url, "week", things=tuple(numbers))


def copies_to_inspect(request: HttpRequest) -> Iterable[HomeCard]:
    """Marked, and no signed decision yet."""
    if not access.may(request.user, "write", Inspection):
        return
    rows = narrow(with_states(Item.objects.made_here().exclude(status__in=GONE)), "marked")
    for copy in rows[:SHOWN]:
        url = f"{copy.get_absolute_url()}#acceptance"
        yield HomeCard(f"Inspect {copy.number} and sign", url, "week", things=(copy.number,))


home_cards += [originals_to_mould, moulds_to_hang, shells_to_make_up, copies_to_inspect]
