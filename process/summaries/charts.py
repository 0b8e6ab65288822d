"""The chart of a run: current in steps above, grown mean thickness below, what happened as marks through both."""

from datetime import datetime

from django.utils import timezone

from process.chemistry.deposit import grown_thickness
from process.chemistry.metals import Ion
from process.models import Event
from process.summaries.cathodes import gain_of
from process.summaries.figures import apart
from process.summaries.planning import areas_of, metal_of
from process.summaries.runs import RunSummary
from process.summaries.sheet import hours
from process.summaries.traced import traced_points
from records.pdf.charts import Axis, Chart, Panel, Series, Target
from records.pdf.charts import Event as Mark
from records.units import show, ureg

LEAST_SHOWN = 50  # a piece that hung there for less than this part of the run has no line to be seen
LONGEST_LABEL = 24
MARKS = {
    Event.Kind.COVERED: "covered", Event.Kind.INTERRUPTION: "current gone", Event.Kind.RESTART: "current back",
    Event.Kind.HUNG_IN: "hung in", Event.Kind.TAKEN_OUT: "taken out", Event.Kind.INSPECTION: "looked at",
    Event.Kind.FAULT: "fault", Event.Kind.STOP: "stop",
}  # fmt: skip


def run_chart(summary: RunSummary) -> Chart | None:
    """None before the run has lasted any time."""
    sheet = summary.sheet
    if not sheet.currents or sheet.until_at is None or sheet.until_at <= sheet.currents[0].at:
        return None
    thickness = _thickness_panel(summary)
    return Chart(
        title=f"Run {summary.run.number}: current and thickness", description=_description(summary),
        panels=(_current_panel(summary), thickness) if thickness else (_current_panel(summary),),
        tz=timezone.get_current_timezone(),
        events=tuple(Mark(line.row.at, MARKS[line.row.kind]) for line in sheet.lines
                     if line.is_event and line.row.kind in MARKS),
        start=sheet.started_at, end=sheet.until_at,
    )  # fmt: skip


def _current_panel(summary: RunSummary) -> Panel:
    """By the sheet, by the logger where there is one, and as planned: one line, or a step where the rail changed."""
    planned, rail = summary.plan.current.value if summary.plan else None, summary.rail
    series = [Series("sheet" if summary.charge.trace else "current", _current_points(summary), step=True)]
    series += [Series("logger", points) for points in traced_points(summary.run, *_span(summary))]
    if planned and rail.changed:
        series.append(Series("planned", _planned_points(summary), step=True, calculated=True))
        planned = None
    targets = (Target(f"planned {show(planned, '_a')}", planned),) if planned else ()
    return Panel(Axis("Current", "A", low=0.0), tuple(series), targets)


def _span(summary: RunSummary) -> tuple:
    return summary.sheet.started_at, summary.sheet.until_at


def _current_points(summary: RunSummary) -> tuple:
    sheet = summary.sheet
    points = [(line.at, line.current_a) for line in sheet.currents]
    return (*points, (sheet.until_at, sheet.current_a))


def _planned_points(summary: RunSummary) -> tuple:
    """The planned density on what hung there in each segment."""
    density, found = summary.run.planned_current_density_a_dm2, []
    for each in summary.rail.shown:
        found.append((each.began_at, density * (each.area.value or 0.0)))
    return (*found, (summary.sheet.until_at, found[-1][1]))


def _thickness_panel(summary: RunSummary) -> Panel | None:
    """Mean over the rail, or of each piece from its own entry where the rail changed."""
    metal, target = metal_of(summary.run), summary.run.planned_thickness_mm
    if not summary.rail.cathodes or metal is None:
        return None
    series = _of_each(summary, metal) if summary.rail.changed else _of_the_rail(summary, metal)
    axis = Axis("Mean thickness", "mm", low=0.0)
    return Panel(axis, series, (Target(f"target {show(target, '_mm')}", target),)) if series else None


def _of_the_rail(summary: RunSummary, metal: Ion) -> tuple[Series, ...]:
    """By the efficiency that the balance found, or by the planned one until then."""
    sheet, share, areas = summary.sheet, _share(summary), areas_of(list(summary.rail.cathodes))
    if not share:
        return ()
    one_ah = _per_ah(metal, apart(sum(areas[1:], start=areas[0]).m)[0], share)
    instants = [line.at for line in sheet.currents] + [sheet.until_at]
    grown = tuple((at, ah * one_ah) for at, ah in zip(instants, sheet.charge_by(instants), strict=True))
    return (Series("thickness", grown, calculated=True),)


def _of_each(summary: RunSummary, metal: Ion) -> tuple[Series, ...]:
    """One line for those that hung there for the same time and grew alike; the last moments show none yet."""
    alike: dict[tuple, list[int]] = {}
    for index, each in enumerate(summary.cathodes):
        share = each.efficiency.value if each.efficiency else summary.run.planned_efficiency_pct
        alike.setdefault((*summary.rail.stays[index], share), []).append(index)
    least = (summary.sheet.until_at - summary.sheet.currents[0].at) / LEAST_SHOWN
    return tuple(
        _grown(summary, metal, group, begin, end, share / 100)
        for (begin, end, share), group in alike.items() if share and end - begin > least
    )  # fmt: skip


def _grown(summary: RunSummary, metal: Ion, group: list[int], begin: datetime, end: datetime, share: float) -> Series:
    one, label = group[0], ", ".join(summary.cathodes[index].cathode.label for index in group)
    one_ah = _per_ah(metal, summary.cathodes[one].cathode.total_area_dm2, share)
    instants = sorted({begin, end, *(line.at for line in summary.sheet.currents if begin < line.at < end)})
    grown = tuple((at, summary.rail.passed_ah(one, at) * one_ah) for at in instants)
    return Series(_short(label), grown, calculated=True)


def _short(label: str) -> str:
    return label if len(label) <= LONGEST_LABEL else f"{label[:LONGEST_LABEL].rstrip(' ,')}…"


def _per_ah(metal: Ion, area_dm2: float, share: float) -> float:
    """Millimetres for each ampere-hour."""
    area, one = ureg.Quantity(area_dm2, "dm**2"), ureg.Quantity(1.0, "A*h")
    return grown_thickness(metal, one, area, min(share, 1.0)).m_as("mm")


def _share(summary: RunSummary) -> float:
    weighed = summary.result and summary.result.efficiency.value
    if weighed and all(gain_of(cathode) is not None for cathode in summary.run.cathodes.all()):
        return weighed / 100
    return summary.run.planned_efficiency_pct / 100


def _description(summary: RunSummary) -> str:
    """The chart in words, for those who do not look at it."""
    sheet, parts = summary.sheet, []
    highest = max(line.current_a for line in sheet.currents)
    parts.append(f"Current up to {show(highest, '_a')} over {show(hours(sheet.until_at - sheet.started_at), '_h')}.")
    if summary.charge.chosen.value is not None:
        parts.append(f"Charge {show(summary.charge.chosen.value, '_ah')}.")
    parts += [
        f"{line.row.cathode.label.capitalize()} was {line.row.get_kind_display()} on the way."
        for line in sheet.lines
        if line.is_event and line.row.cathode_id
    ]
    if summary.interruptions:
        count = len(summary.interruptions)
        parts.append(f"The current was gone {count} time{'s' if count > 1 else ''}.")
    return " ".join(parts)
