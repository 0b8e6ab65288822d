"""The chart of a run: current in steps above, grown mean thickness below, what happened as marks through both."""

from django.utils import timezone

from process.chemistry.deposit import grown_thickness
from process.models import Event
from process.summaries.cathodes import gain_of
from process.summaries.planning import areas_of, metal_of
from process.summaries.runs import RunSummary
from process.summaries.sheet import hours
from records.pdf.charts import Axis, Chart, Panel, Series, Target
from records.pdf.charts import Event as Mark
from records.units import show, ureg

MARKS = {
    Event.Kind.COVERED: "covered", Event.Kind.INTERRUPTION: "current gone", Event.Kind.RESTART: "current back",
    Event.Kind.INSPECTION: "looked at", Event.Kind.FAULT: "fault", Event.Kind.STOP: "stop",
}  # fmt: skip


def run_chart(summary: RunSummary) -> Chart | None:
    """None before the run has lasted any time."""
    sheet = summary.sheet
    if not sheet.currents or sheet.until_at is None or sheet.until_at <= sheet.currents[0].at:
        return None
    planned = summary.plan.current.value if summary.plan else None
    current = Panel(
        Axis("Current", "A", low=0.0), (Series("current", _current_points(summary), step=True),),
        (Target(f"planned {show(planned, '_a')}", planned),) if planned else (),
    )  # fmt: skip
    thickness = _thickness_panel(summary)
    return Chart(
        title=f"Run {summary.run.number}: current and thickness", description=_description(summary),
        panels=(current, thickness) if thickness else (current,), tz=timezone.get_current_timezone(),
        events=tuple(Mark(line.row.at, MARKS[line.row.kind]) for line in sheet.lines
                     if line.is_event and line.row.kind in MARKS),
        start=sheet.started_at, end=sheet.until_at,
    )  # fmt: skip


def _current_points(summary: RunSummary) -> tuple:
    sheet = summary.sheet
    points = [(line.at, line.current_a) for line in sheet.currents]
    return (*points, (sheet.until_at, sheet.current_a))


def _thickness_panel(summary: RunSummary) -> Panel | None:
    """Mean over the rail, by the efficiency that the balance found, or by the planned one until then."""
    rail, metal, sheet = list(summary.run.cathodes.all()), metal_of(summary.run), summary.sheet
    share = _share(summary)
    if not rail or metal is None or not share:
        return None
    areas = areas_of(rail)
    instants = [line.at for line in sheet.currents] + [sheet.until_at]
    area = float(getattr((whole := sum(areas[1:], start=areas[0])).m, "nominal_value", whole.m))
    one_ah = grown_thickness(metal, ureg.Quantity(1.0, "A*h"), ureg.Quantity(area, "dm**2"), min(share, 1.0)).m_as("mm")
    grown = tuple((at, ah * one_ah) for at, ah in zip(instants, sheet.charge_by(instants), strict=True))
    target = summary.run.planned_thickness_mm
    return Panel(
        Axis("Mean thickness", "mm", low=0.0), (Series("thickness", grown, calculated=True),),
        (Target(f"target {show(target, '_mm')}", target),),
    )  # fmt: skip


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
    if summary.interruptions:
        count = len(summary.interruptions)
        parts.append(f"The current was gone {count} time{'s' if count > 1 else ''}.")
    return " ".join(parts)
