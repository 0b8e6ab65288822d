"""What comes next in a run that goes on: its expected finish, and the next reading that is due."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime, timedelta

from pint import Quantity

from process.chemistry.plan import remaining_time
from process.models import Run
from process.summaries.figures import figure
from process.summaries.planning import PlanSummary, finish
from process.summaries.sheet import Sheet
from records import clock
from records.figures import Figure
from records.units import ureg


@dataclass(frozen=True)
class Prospect:
    """`finish_at` is None while no current flows or nothing is planned; `reached`: the planned charge has passed."""

    finish_at: datetime | None
    remaining: Figure | None
    reached: bool
    next_reading_at: datetime
    is_due: bool
    is_late: bool

    @property
    def state(self) -> str:
        return "look" if self.is_due else "open"


def prospect_of(
    run: Run, sheet: Sheet, plan: PlanSummary | None, charge: Quantity, pieces: Collection[Figure] = ()
) -> Prospect | None:
    """Nothing for a run that has not started or is over; on a rail that changed the last of its `pieces` counts."""
    if not sheet.is_running or run.outcome or sheet.last_at is None:
        return None
    due = sheet.last_at + timedelta(hours=run.reading_interval_h)
    late_by = clock.now() - due
    remaining = _longest(pieces) if pieces else _remaining(sheet, plan, charge)
    hours = remaining.value if remaining else None
    return Prospect(
        finish_at=finish(sheet.until_at, hours),
        remaining=remaining,
        reached=hours is not None and hours <= 0,
        next_reading_at=due,
        is_due=late_by >= timedelta(0),
        is_late=late_by > timedelta(hours=run.reading_interval_h),
    )


def _longest(pieces: Collection[Figure]) -> Figure | None:
    """The run is over when the piece that joined last is thick enough."""
    return max((each for each in pieces if each.value is not None), key=lambda each: each.value, default=None)


def _remaining(sheet: Sheet, plan: PlanSummary | None, charge: Quantity) -> Figure | None:
    if plan is None or plan.charge.working is None or sheet.current_a <= 0:
        return None
    return figure(
        "Still to run", "_h", remaining_time,
        planned_charge=plan.charge.working.quantity, charge=charge, current=ureg.Quantity(sheet.current_a, "A"),
    )  # fmt: skip
