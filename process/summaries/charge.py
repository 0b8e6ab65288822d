"""Charge of a run from its sheet: readings and events in one time order."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from process.chemistry.series import SheetCharge, sheet_charge
from process.models import Event, Reading, Run
from process.summaries.meter import meter_charge_ah
from records import clock

# An event with a current sets it; after an interruption or a stop nothing flows.
OFF = {Event.Kind.INTERRUPTION, Event.Kind.STOP}


@dataclass(frozen=True)
class SheetLine:
    """One line that says which current flows from its instant on."""

    at: datetime
    current_a: float
    is_switching: bool
    row: Reading | Event


def sheet_lines(readings: Iterable[Reading], events: Iterable[Event]) -> list[SheetLine]:
    """Every reading and event that gives a current, in time order.

    Of one instant, an event that sets the current stands before a reading, one that takes it away after it.
    """
    lines = [SheetLine(e.at, e.current_a, True, e) for e in events if e.kind not in OFF and e.current_a is not None]
    lines += [SheetLine(r.at, r.current_a, False, r) for r in readings if r.current_a is not None]
    lines += [SheetLine(e.at, 0.0, True, e) for e in events if e.kind in OFF]
    return sorted(lines, key=lambda line: (line.at, _rank(line)))


def _rank(line: SheetLine) -> int:
    if not line.is_switching:
        return 1
    return 0 if line.current_a else 2


def charge_of_lines(lines: list[SheetLine], until: datetime | None = None) -> SheetCharge:
    """The sheet's figure up to its last line, or up to an instant while the run goes on."""
    return sheet_charge(
        [line.at.timestamp() for line in lines],
        [line.current_a for line in lines],
        until_s=until.timestamp() if until else None,
        switched=[line.is_switching for line in lines],
    )


def sheet_charge_ah(run: Run) -> float:
    """The sheet's charge of a run by now; rows come from the run's prefetched readings and events where given."""
    lines = sheet_lines(run.readings.all(), run.events.all())
    if not lines:
        return 0.0
    stopped = any(line.row for line in lines if isinstance(line.row, Event) and line.row.kind == Event.Kind.STOP)
    return charge_of_lines(lines, None if stopped else clock.now()).until_ah


def trace_charge_ah(run: Run) -> float | None:
    """What the accepted logger traces counted together, as their decisions leave it."""
    if hasattr(run, "traced_ah"):  # RunQuerySet.with_traced
        return run.traced_ah
    found = [trace.charge_ah or 0.0 for trace in run.traces.all() if trace.is_accepted]
    return sum(found) if found else None


def chosen_charge_ah(run: Run) -> float:
    """The charge that the run is judged by; the sheet where the chosen evidence gives nothing."""
    others = {Run.ChargeFrom.METER: meter_charge_ah, Run.ChargeFrom.TRACE: trace_charge_ah}
    chosen = others[run.charge_from](run) if run.charge_from in others else None
    return sheet_charge_ah(run) if chosen is None else chosen
