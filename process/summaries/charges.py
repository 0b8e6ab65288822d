"""The charge of a run by each evidence: trace, ampere-hour meter and sheet; one is chosen, with a reason."""

from dataclasses import dataclass
from itertools import groupby

from pint import Quantity

from process.chemistry.worked import Entry, Working
from process.models import Run
from process.summaries.figures import figure_of
from process.summaries.meter import Reach, meter_figure, reach_of
from process.summaries.sheet import Sheet, hours
from process.summaries.traces import trace_figure
from records.figures import Figure
from records.units import ureg

MOST_TERMS = 12
APART_PCT = 3.0  # meter and sheet further apart than this are looked into; rule of this register
MISSING = {
    Run.ChargeFrom.METER: "The meter was chosen, but its readings give no charge; the sheet stands in for it.",
    Run.ChargeFrom.TRACE: "The trace was chosen, but none is accepted; the sheet stands in for it.",
}
RULE = "the current recorded at an instant holds until the next entry (rule of this register)"


@dataclass(frozen=True)
class Beside:
    """One evidence beside the others: its figure, how far it lies from the chosen one, and whether it is chosen."""

    code: str
    name: str
    figure: Figure | None
    apart_pct: float | None
    is_chosen: bool

    @property
    def is_apart(self) -> bool:
        return abs(self.apart_pct or 0.0) > APART_PCT

    @property
    def apart_words(self) -> str:
        """“−0.9 %”; the sign is said, since more and less mean different faults."""
        return f"{self.apart_pct:+z.1f}\u2009%".replace("-", "−") if self.apart_pct is not None else ""


@dataclass(frozen=True)
class Charge:
    """`chosen` is what every other figure of the run follows from."""

    chosen: Figure
    quantity: Quantity
    sheet: Figure
    meter: Figure | None
    reason: str
    doubt_ah: float
    trace: Figure | None = None
    reach: Reach | None = None  # of the meter

    @property
    def is_apart(self) -> bool:
        return any(each.is_apart for each in self.beside)

    @property
    def beside(self) -> tuple[Beside, ...]:
        """Trace, meter and sheet side by side, each in percent of the chosen one."""
        kinds = (
            (Run.ChargeFrom.TRACE, self.trace),
            (Run.ChargeFrom.METER, self.meter),
            (Run.ChargeFrom.SHEET, self.sheet),
        )
        return tuple(
            Beside(kind.value, str(kind.label), each, self._apart(each), each is self.chosen) for kind, each in kinds
        )

    def _apart(self, each: Figure | None) -> float | None:
        """Meter and sheet are compared over the time in which the meter was read: it may be read less often."""
        if each is None or each is self.chosen or not each.value or not self.chosen.value:
            return None
        values = {id(each): each.value, id(self.chosen): self.chosen.value}
        if self.reach and {id(self.meter), id(self.sheet)} == set(values):
            values[id(self.sheet)] = self.reach.sheet_ah
        theirs = values[id(self.chosen)]
        return (values[id(each)] / theirs - 1) * 100 if theirs else None

    @property
    def known(self) -> tuple[Figure, ...]:
        """Every figure that there is, the chosen one first."""
        rest = [each for each in (self.sheet, self.meter, self.trace) if each is not None and each is not self.chosen]
        return (self.chosen, *rest)


def charge_of(run: Run, sheet: Sheet, planned_ah: float | None) -> Charge:
    """The three figures and the chosen one; the sheet stands in where the chosen evidence gives nothing."""
    by_sheet, by_meter, by_trace = (
        _by_sheet(sheet, planned_ah),
        meter_figure(run, planned_ah),
        trace_figure(run, planned_ah),
    )
    wanted = {Run.ChargeFrom.METER: by_meter, Run.ChargeFrom.TRACE: by_trace}.get(run.charge_from, by_sheet)
    rest = (sheet.charge.doubt.m, by_trace, reach_of(run, sheet.charge_by))
    if wanted is not None and wanted.value is not None and wanted is not by_sheet:
        return Charge(wanted, wanted.working.quantity, by_sheet, by_meter, run.charge_reason, *rest)
    reason = MISSING.get(run.charge_from, run.charge_reason)
    return Charge(by_sheet, sheet.quantity, by_sheet, by_meter, reason, *rest)


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
        _inputs(sheet),
        (),
        result,
        f"definition Q = ∫I·dt; {RULE}",
        written_out=f"Q = {' + '.join(terms) or '0 A·h'}",
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
