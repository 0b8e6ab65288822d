"""The standing of many baths in few questions: the last analysis of each, and the charge of the runs since."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from datetime import date

from django.db.models import OuterRef, Subquery

from process.models import Bath, BathAnalysis, Event, Run
from process.summaries.baths import Standing, end_of, standing_of
from process.summaries.charge import chosen_charge_ah


def standings(baths: Sequence[Bath], on: date) -> list[tuple[Bath, Standing]]:
    """Each bath with what its last analysis says on a day."""
    last = _last_analyses(baths, on)
    since = _charge_since(last.values(), on)
    return [(bath, standing_of(bath, last.get(bath.pk), since[bath.pk], on)) for bath in baths]


def _last_analyses(baths: Sequence[Bath], on: date) -> dict[int, BathAnalysis]:
    mine = BathAnalysis.objects.filter(bath=OuterRef("bath"), sampled_at__lt=end_of(on)).order_by("-sampled_at")
    rows = BathAnalysis.objects.filter(bath__in=baths, pk=Subquery(mine.values("pk")[:1]))
    return {row.bath_id: row for row in rows.select_related("bath").prefetch_related("bath__limits")}


def _charge_since(analyses: Iterable[BathAnalysis], on: date) -> dict[int, float]:
    """Ampere-hours by bath of the runs that began after its analysis; older runs are not read at all."""
    sampled = {analysis.bath_id: analysis.sampled_at for analysis in analyses}
    entries = Event.objects.filter(
        run__bath__in=sampled, kind=Event.Kind.ENTRY, at__gte=min(sampled.values(), default=end_of(on))
    )
    entries = entries.filter(at__lt=end_of(on)).values_list("run", "run__bath", "at")
    counted = [run for run, bath, at in entries if at >= sampled[bath]]
    charge: dict[int, float] = defaultdict(float)
    for run in Run.objects.filter(pk__in=counted).with_evidence():
        charge[run.bath_id] += chosen_charge_ah(run)
    return charge
