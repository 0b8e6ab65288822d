"""The charge of a run by each evidence, the sheet and the ampere-hour meter; one is chosen, with a reason."""

from dataclasses import dataclass
from itertools import groupby

from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.traces import meter_charge
from process.chemistry.worked import Entry, Working, worked
from process.models import Run
from process.summaries.evidence import quantity
from process.summaries.figures import figure_of
from process.summaries.sheet import Sheet, hours
from records.figures import Figure
from records.units import ureg

MOST_TERMS = 12
APART_PCT = 3.0  # meter and sheet further apart than this are looked into; rule of this register
RULE = "the current recorded at an instant holds until the next entry (rule of this register)"


@dataclass(frozen=True)
class Charge:
    """`chosen` is what every other figure of the run follows from."""

    chosen: Figure
    quantity: Quantity
    sheet: Figure
    meter: Figure | None
    reason: str
    doubt_ah: float

    @property
    def difference_pct(self) -> float | None:
        """How far the meter lies from the sheet."""
        if self.meter is None or not self.meter.value or not self.sheet.value:
            return None
        return (self.meter.value / self.sheet.value - 1) * 100

    @property
    def is_apart(self) -> bool:
        return abs(self.difference_pct or 0.0) > APART_PCT


def charge_of(run: Run, sheet: Sheet, planned_ah: float | None) -> Charge:
    """Both figures and the chosen one; the sheet stands where the meter was chosen but gives nothing."""
    by_sheet, by_meter = _by_sheet(sheet, planned_ah), _by_meter(run, planned_ah)
    if run.charge_from == Run.ChargeFrom.METER and by_meter and by_meter.value is not None:
        return Charge(by_meter, by_meter.working.quantity, by_sheet, by_meter, run.charge_reason, sheet.charge.doubt.m)
    reason = run.charge_reason
    if run.charge_from == Run.ChargeFrom.METER:
        reason = "The meter was chosen, but it has no two readings to compare; the sheet stands in for it."
    return Charge(by_sheet, sheet.quantity, by_sheet, by_meter, reason, sheet.charge.doubt.m)


def _by_sheet(sheet: Sheet, planned_ah: float | None) -> Figure:
    return figure_of("Charge by the sheet", "_ah", _working(sheet), target=planned_ah)


def _working(sheet: Sheet) -> Working:
    """The sum of the sheet written out, stretches of one current taken together."""
    stretches = _stretches(sheet)
    terms = [f"{amperes:g} A × {time:.4g} h" for amperes, time in stretches if amperes]
    if len(terms) > MOST_TERMS:
        terms = [*terms[: MOST_TERMS - 1], "…", terms[-1]]
    result = Entry("Q", "charge passed", sheet.quantity, "A*h")
    return Working(
        "Charge of the bench sheet",
        "Q = Σ I(i)·(t(i+1) − t(i))",
        f"Q = {' + '.join(terms) or '0 A·h'} = {result.text}",
        _inputs(sheet),
        (),
        result,
        f"definition Q = ∫I·dt; {RULE}",
    )


def _inputs(sheet: Sheet) -> tuple[Entry, ...]:
    return (
        Entry("n", "entries that give a current", ureg.Quantity(len(sheet.currents)), "", "measured"),
        Entry("t", "time with current", ureg.Quantity(sheet.charge.energised_h, "h"), "h", "measured"),
    )


def _stretches(sheet: Sheet) -> list[tuple[float, float]]:
    ends = [line.at for line in sheet.currents[1:]] + [sheet.until_at] if sheet.until_at else []
    spans = [(line.current_a, max(hours(end - line.at), 0.0)) for line, end in zip(sheet.currents, ends, strict=False)]
    return [(amperes, sum(time for _, time in same)) for amperes, same in groupby(spans, key=lambda span: span[0])]


def _by_meter(run: Run, planned_ah: float | None) -> Figure | None:
    counted = sorted((r for r in run.readings.all() if r.meter_ah is not None), key=lambda r: r.at)
    if len(counted) < 2:
        return None
    first, last = (quantity(row, "meter_ah") for row in (counted[0], counted[-1]))
    try:
        working = worked(meter_charge, evidence=_MEASURED, reading_before=first, reading_after=last)
    except ChemistryError as error:
        return Figure("Charge by the meter", None, "_ah", note=f"Not computed: {error}.")
    return figure_of("Charge by the meter", "_ah", working, target=planned_ah)


_MEASURED = {"reading_before": "measured", "reading_after": "measured"}
