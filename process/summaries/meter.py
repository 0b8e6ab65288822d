"""What an ampere-hour meter counted: the rise of its count, stretch by stretch where it was set back."""

import itertools
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

from pint import Quantity

from process.chemistry.traces import meter_charge
from process.chemistry.worked import Entry, Working, worked
from process.models import Reading, Run
from process.summaries.evidence import quantity
from process.summaries.figures import figure_of
from records.figures import Figure
from records.units import plain

LABEL = "Charge by the meter"
ChargeBy = Callable[[list[datetime]], list[float]]
AT_ONCE = timedelta(minutes=1)
NO_RISE = (
    "Not computed: the meter was set back, and what passed around that is not known. Where it was read just before and "
    "after, enter both readings at that minute."
)


@dataclass(frozen=True)
class Stretch:
    """Two readings between which the count only rose."""

    first: Reading
    last: Reading

    @property
    def charge(self) -> Quantity:
        return meter_charge(quantity(self.first, "meter_ah"), quantity(self.last, "meter_ah"))


def counted(readings: Iterable[Reading]) -> list[Reading]:
    return sorted((each for each in readings if each.meter_ah is not None), key=lambda each: (each.at, each.pk))


def stretches_of(readings: Iterable[Reading]) -> tuple[Stretch, ...]:
    """A count that falls was set back: read just before and after, nothing is lost; else nobody knows what passed."""
    runs: list[list[Reading]] = []
    for reading in counted(readings):
        last = runs[-1][-1] if runs else None
        if last and reading.meter_ah >= last.meter_ah:
            runs[-1].append(reading)
        elif last and reading.at - last.at > AT_ONCE:
            return ()
        else:
            runs.append([reading])
    return tuple(Stretch(each[0], each[-1]) for each in runs if len(each) > 1)


def meter_charge_ah(run: Run) -> float | None:
    """The sum of all rises; None where it was set back unread, or not read twice."""
    found = stretches_of(run.readings.all())
    return sum(each.last.meter_ah - each.first.meter_ah for each in found) if found else None


def meter_figure(run: Run, planned_ah: float | None) -> Figure | None:
    if len(counted(run.readings.all())) < 2:
        return None
    found = stretches_of(run.readings.all())
    if not found:
        return Figure(LABEL, None, "_ah", note=NO_RISE)
    return figure_of(LABEL, "_ah", _working(found), target=planned_ah)


def _working(found: tuple[Stretch, ...]) -> Working:
    if len(found) == 1:
        first, last = (quantity(row, "meter_ah") for row in (found[0].first, found[0].last))
        known = {"reading_before": "measured", "reading_after": "measured"}
        return worked(meter_charge, evidence=known, reading_before=first, reading_after=last)
    total = sum((each.charge for each in found[1:]), found[0].charge)
    terms = [f"({plain(each.last.meter_ah)} − {plain(each.first.meter_ah)})" for each in found]
    return Working(
        "Charge that an ampere-hour meter counted, set back in between", "Q = Σ (Q₂ − Q₁)", (), (),
        Entry("Q", "charge passed", total, "A*h"), "a counter’s difference, stretch by stretch",
        written_out=f"Q = {' + '.join(terms)} A·h",
    )  # fmt: skip


@dataclass(frozen=True)
class Reach:
    """From when to when the meter was read, and what the sheet counted over the same stretches."""

    since: datetime
    until: datetime
    sheet_ah: float
    set_back_count: int


def reach_of(run: Run, charge_by: ChargeBy) -> Reach | None:
    found = stretches_of(run.readings.all())
    if not found:
        return None
    before, after = charge_by([each.first.at for each in found]), charge_by([each.last.at for each in found])
    counts = counted(run.readings.all())
    backs = sum(later.meter_ah < earlier.meter_ah for earlier, later in itertools.pairwise(counts))
    return Reach(found[0].first.at, found[-1].last.at, sum(after) - sum(before), backs)
