"""When a planned run is to be read, and what should have passed by then."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from process.chemistry.deposit import grown_thickness
from process.chemistry.ramp import Stage, charge_after_hours, current_after_hours
from process.models import Run
from process.summaries.figures import apart
from process.summaries.planning import PlanSummary, metal_of
from process.summaries.ramp import BUILD

MOST_READINGS = 80
SAME_H = 1 / 60  # two readings within a minute are one
FINISH = "stop, charge reached"


@dataclass(frozen=True)
class PlannedReading:
    """`at` is None while nobody says when the run starts."""

    hours_h: float
    at: datetime | None
    words: str
    current_a: float
    charge_ah: float
    thickness_mm: float


def offset(local: datetime) -> str:
    """+01:00: so that no hour of a clock change is meant twice."""
    written = local.strftime("%z")
    return f"{written[:3]}:{written[3:]}"


def readings_of(run: Run, plan: PlanSummary, start: datetime | None) -> tuple[list[PlannedReading], float]:
    """Entry, every change of current, every interval, the finish; and the interval, wider where a run is very long."""
    stages = [each.stage for each in plan.stages]
    if not stages or plan.time.value is None:
        return [], run.reading_interval_h
    whole, interval = plan.time.value, run.reading_interval_h
    while whole / interval > MOST_READINGS:
        interval *= 2
    words = _changes(plan) | {whole: FINISH}
    regular = [interval * count for count in range(1, int(whole / interval) + 1)]
    hours = sorted([*words, *(hour for hour in regular if all(abs(hour - each) > SAME_H for each in words))])
    return [_reading(run, plan, stages, hour, words.get(hour, ""), start) for hour in hours], interval


def _changes(plan: PlanSummary) -> dict[float, str]:
    """The hour at which each step begins."""
    named = [(each.begins_h, each.words or "next step") for each in plan.stages]
    return {hour: ("entry; " if hour == 0 and "entry" not in words else "") + words for hour, words in named}


def _reading(
    run: Run, plan: PlanSummary, stages: list[Stage], hours: float, words: str, start: datetime | None
) -> PlannedReading:
    charge = charge_after_hours(stages, hours)
    grown = grown_thickness(metal_of(run), charge, plan.area.working.quantity, run.planned_efficiency_pct / 100)
    return PlannedReading(
        hours, start + timedelta(hours=hours) if start else None, words.replace(BUILD, "build"),
        apart(current_after_hours(stages, hours).m_as("A"))[0], apart(charge.m_as("A*h"))[0],
        apart(grown.m_as("mm"))[0],
    )  # fmt: skip
