"""The logger's figure of a run: its accepted traces together, with what is open, bridged and not covered."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta
from math import hypot

from pint import Quantity
from uncertainties import ufloat

from process.chemistry.worked import Entry, Working
from process.models import Run, Trace
from process.summaries.figures import figure_of
from records.figures import Figure
from records.units import show, ureg

RULE = "trapezoid between samples up to twice the interval apart; a longer gap gives bounds (rule of this register)"

SWITCHED = "± of the switching moments between its samples; an error of the logger itself is not in it."


@dataclass(frozen=True)
class Coverage:
    """How much of the run its traces saw."""

    covered: timedelta
    whole: timedelta

    @property
    def covered_h(self) -> float:
        return self.covered.total_seconds() / 3600

    @property
    def whole_h(self) -> float:
        return self.whole.total_seconds() / 3600

    @property
    def is_whole(self) -> bool:
        return self.covered >= self.whole - timedelta(minutes=1)


def accepted(run: Run) -> list[Trace]:
    """In time order; from what was prefetched, if it was; not asked for where it is known that there is none."""
    if getattr(run, "traced_ah", 0.0) is None:
        return []
    if not hasattr(run, "_accepted_traces"):  # the charge and the interruptions both read them
        found = [trace for trace in run.traces.all() if trace.is_accepted and trace.starts_at]
        run._accepted_traces = sorted(found, key=lambda trace: trace.starts_at)
    return run._accepted_traces


def trace_figure(run: Run, planned_ah: float | None) -> Figure | None:
    """The figure with its working; None while no trace is accepted."""
    found = accepted(run)
    if not found:
        return None
    return figure_of("Charge by the trace", "_ah", _working(found), target=planned_ah, note=_note(found))


def _note(found: list[Trace]) -> str:
    """Bounds, not a number, where gaps were left open; and what its ± is of."""
    most, bridged = (sum(getattr(trace, name) or 0.0 for trace in found) for name in ("open_ah", "bridged_ah"))
    parts = (
        f"Gaps left open may add up to {show(most, '_ah')}." if most else "",
        f"{show(bridged, '_ah')} of it bridged over gaps." if bridged else "",
        SWITCHED if any(trace.switching_ah for trace in found) else "",
    )
    return " ".join(filter(None, parts))


def _working(found: list[Trace]) -> Working:
    result = Entry("Q", "charge passed", _charge(found), "A*h")
    terms = [f"{part:.5g} A·h" for trace in found for part in (trace.known_ah, trace.bridged_ah) if part]
    inputs = tuple(entry for trace in found for entry in _inputs(trace, len(found) > 1))
    return Working(
        "Charge of the logger’s trace", "Q = Σ (I(i) + I(i+1))/2·(t(i+1) − t(i)) + Q(bridged)",
        inputs, (), result, f"trapezoidal rule; {RULE}; file {', '.join(trace.sha256[:12] for trace in found)}",
        written_out=f"Q = {' + '.join(terms) or '0 A·h'}",
    )  # fmt: skip


def _charge(found: list[Trace]) -> Quantity:
    """± by the moments of switching alone, which lie between samples; what the logger itself errs nobody wrote."""
    whole, spread = sum(trace.charge_ah or 0.0 for trace in found), hypot(*(t.switching_ah or 0.0 for t in found))
    return ureg.Quantity(ufloat(whole, spread) if spread else whole, "A*h")


def _inputs(trace: Trace, several: bool) -> Iterable[Entry]:
    of = f" of {trace.original_name}" if several else ""
    count = ureg.Quantity(float(trace.sample_count))
    yield Entry("n", f"samples that count{of}", count, "", "measured", digit_count=9)
    yield Entry("Q", f"integrated{of}", ureg.Quantity(trace.known_ah, "A*h"), "A*h", "calculated")
    if trace.bridged_ah:
        yield Entry("Q(bridged)", f"bridged{of}", ureg.Quantity(trace.bridged_ah, "A*h"), "A*h", "estimated")


def coverage_of(run: Run, started_at: datetime | None, until_at: datetime | None) -> Coverage | None:
    """The part of the run in which samples were taken, gaps included."""
    found = accepted(run)
    if not found or started_at is None or until_at is None:
        return None
    covered, reached = timedelta(), started_at
    for trace in found:
        covered += max(min(trace.ends_at, until_at) - max(trace.starts_at, reached), timedelta())
        reached = max(reached, trace.ends_at)
    return Coverage(covered, until_at - started_at)


def undecided(trace: Trace) -> list[dict]:
    """Findings that still wait for a person."""
    return [finding for finding in trace.findings if not choice_of(trace, finding)]


def choice_words(trace: Trace, finding: dict) -> str:
    """What was decided about a finding, in the words of the choice; empty while nothing is."""
    chosen = choice_of(trace, finding)
    return next((choice["label"] for choice in finding["choices"] if choice["key"] == chosen), "")


def choice_of(trace: Trace, finding: dict) -> str:
    chosen = trace.decisions.get(finding["key"], "")
    return chosen if any(choice["key"] == chosen for choice in finding["choices"]) else finding["default"]


def overlapping(trace: Trace) -> list[Trace]:
    """Accepted traces of the run that sampled at the same time."""
    if trace.starts_at is None:
        return []
    return [
        other
        for other in accepted(trace.run)
        if other.pk != trace.pk and other.starts_at < trace.ends_at and trace.starts_at < other.ends_at
    ]
