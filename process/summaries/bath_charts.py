"""A bath over time: salt and acid as found, the ledger beneath, and what was done as marks through all."""

from collections.abc import Iterable, Sequence

from django.utils import timezone

from process.models import Bath, BathAddition, BathLimit, BathService, Constituent
from process.summaries.analyses import AnalysisSummary
from process.summaries.baths import LedgerLine
from records.pdf.charts import Axis, Chart, Event, Panel, Series, Target
from records.units import show

NAMES = {Constituent.COPPER_SULPHATE: "Copper sulphate", Constituent.SULPHURIC_ACID: "Sulphuric acid"}
MARKED = {
    BathService.Kind.FILTER: "filter", BathService.Kind.BAGS: "bags", BathService.Kind.CARBON: "carbon",
    BathService.Kind.TOP_UP: "water", BathService.Kind.DILUTION: "diluted",
}  # fmt: skip
MOST_MARKS = 12  # more would lie over each other: then the diary tells them


def bath_chart(
    bath: Bath, summaries: Sequence[AnalysisSummary], ledger: Sequence[LedgerLine],
    services: Iterable[BathService], additions: Iterable[BathAddition],
) -> Chart | None:  # fmt: skip
    """None before there are two instants to draw between."""
    ordered = sorted(summaries, key=lambda each: each.analysis.sampled_at)
    limits = {limit.constituent: limit for limit in bath.limits.all()}
    panels = [_composition(name, ordered, limits.get(name)) for name in NAMES]
    chart = Chart(
        title=f"Bath {bath.number}: composition and charge", description=_description(ordered, ledger),
        panels=tuple(panel for panel in (*panels, _ledger(bath, ledger)) if panel),
        tz=timezone.get_current_timezone(), events=tuple(_marks(services, additions)),
    )  # fmt: skip
    return chart if chart.panels and chart.span() else None


def _composition(name: str, ordered: Sequence[AnalysisSummary], limit: BathLimit | None) -> Panel | None:
    points = tuple(
        (each.analysis.sampled_at, found.figure.value) for each in ordered if (found := each.of(name)) is not None
    )
    if not points:
        return None
    target = limit.target_g_l if limit else None
    targets = (Target(f"target {target:g}", target),) if target is not None else ()
    values = [value for _, value in points] + [target for target in [target] if target]
    low = min([*values, limit.warn_low_g_l if limit and limit.warn_low_g_l else min(values)])
    return Panel(Axis(NAMES[name], "g/L", low=float(int(low))), (Series("found", points),), targets)


def _ledger(bath: Bath, ledger: Sequence[LedgerLine]) -> Panel | None:
    if not ledger:
        return None
    points = tuple((line.started_at, line.total_ah) for line in ledger)
    low = min(bath.opening_charge_ah, points[0][1])
    return Panel(Axis("Ledger", "Ah", low=float(int(low))), (Series("after each run", points, step=True),))


def _marks(services: Iterable[BathService], additions: Iterable[BathAddition]) -> list[Event]:
    marks = [Event(each.done_at, MARKED[each.kind]) for each in services if each.kind in MARKED]
    marks += [Event(each.added_at, "added") for each in additions]
    days: dict[tuple, Event] = {}
    for mark in marks:
        days.setdefault((timezone.localdate(mark.at), mark.label), mark)
    return list(days.values()) if len(days) <= MOST_MARKS else []


def _description(ordered: Sequence[AnalysisSummary], ledger: Sequence[LedgerLine]) -> str:
    """The chart in words, for those who do not look at it."""
    parts = []
    for name, title in NAMES.items():
        values = [found.figure.value for each in ordered if (found := each.of(name)) is not None]
        if values:
            spoken = show(min(values), "_g_l"), show(max(values), "_g_l")
            count = "one analysis" if len(values) == 1 else f"{len(values)} analyses"
            parts.append(f"{title} between {spoken[0]} and {spoken[1]} in {count}.")
    if ledger:
        parts.append(f"The ledger stands at {show(ledger[-1].total_ah, '_ah')}.")
    return " ".join(parts)
