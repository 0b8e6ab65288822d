"""What the making adds to the file of a commission: the bath gate of its runs, and what is still unfinished."""

from collections.abc import Iterable

from django.db.models import OuterRef, Q, QuerySet, Subquery
from django.utils import timezone

from process.models import BathAnalysis, Event, Mould, Run
from records.clock import day_words
from records.extensions import FilePart, OpenMatter, file_parts
from records.gate_overview import GateLine
from records.gates import Check
from records.models import Commission, Consent, Gate
from records.roles import REGISTRAR, TECHNICIAN

OWED = (Consent.MouldFate.DESTROY, Consent.MouldFate.RETURN)


def part_of(commission: Commission, consents: Iterable[Consent]) -> FilePart:
    runs = list(_runs(commission))
    owed = [consent for consent in consents if consent.mould_fate in OWED]
    matters = [*_unjudged(runs), *(_moulds(commission) if owed else [])]
    return FilePart([GateLine(Gate.BATH, Gate.BATH.label, run, [_check(run)]) for run in runs], matters)


def _runs(commission: Commission) -> QuerySet[Run]:
    """Each with when it went in, and the last analysis of its bath before that."""
    entered = Event.objects.filter(run=OuterRef("pk"), kind=Event.Kind.ENTRY).order_by("at").values("at")[:1]
    analysed = BathAnalysis.objects.filter(bath=OuterRef("bath"), sampled_at__lte=OuterRef("entered_at"))
    last = analysed.order_by("-sampled_at").values("number")[:1]
    rows = Run.objects.filter(Q(commission=commission) | Q(cathodes__mould__commission=commission)).distinct()
    return rows.annotate(entered_at=Subquery(entered)).annotate(analysis=Subquery(last)).order_by("number")


def _check(run: Run) -> Check:
    """What was found when it went in; the gate of a planned run is asked when it starts."""
    if run.entered_at is None:
        words = f"{run.number} has not started: bath, mould and pulls are asked when it goes in."
        return Check("bath", False, words, TECHNICIAN, is_ahead=True)
    analysis = f"; the bath as in {run.analysis}" if run.analysis else ""
    words = f"{run.number} went in on {day_words(timezone.localdate(run.entered_at))}, nothing unmet{analysis}."
    return Check("bath", True, words)


def _unjudged(runs: Iterable[Run]) -> Iterable[OpenMatter]:
    for run in runs:
        if not run.outcome:
            yield OpenMatter(f"How run {run.number} ended is not said yet.", TECHNICIAN, run.get_absolute_url())


def _moulds(commission: Commission) -> Iterable[OpenMatter]:
    """Still here although the owner decided otherwise."""
    owing = Mould.objects.filter(commission=commission, fate__in=[Mould.Fate.IN_STORE, Mould.Fate.ON_LOAN])
    rows = owing.filter(model__consents__mould_fate__in=OWED, model__consents__commissions=commission)
    for mould in rows.select_related("item").distinct():
        words = f"Mould {mould.item.number} is {mould.get_fate_display()}; the owner’s consent asks for its end."
        yield OpenMatter(words, REGISTRAR, mould.get_absolute_url())


file_parts.append(part_of)
