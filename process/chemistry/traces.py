"""Charge from a logger’s trace: trapezoids between neighbours, and bounds where the trace has a gap."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.formula import formula
from process.chemistry.terms import CHARGE, above
from records.units import ureg

GAP_INTERVALS = 2.0  # samples further apart than this many nominal intervals leave a gap
SPIKE_FACTOR = 1.5  # a current above this many times the plan is suspected
SECONDS_PER_HOUR = 3600.0
Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Gap:
    """A stretch without samples; its charge lies between 0 and `most_ah`, against the sign where it was reversed."""

    from_s: float
    to_s: float
    most_ah: float
    bridged_ah: float  # what a straight line between its ends would give


@dataclass(frozen=True)
class TraceCharge:
    """The trace’s figure: what is known, and what the gaps may add."""

    known: Quantity
    gaps: tuple[Gap, ...]
    duplicate_count: int

    @property
    def most(self) -> Quantity:
        return self.known + ureg.Quantity(sum(gap.most_ah for gap in self.gaps), "A*h")

    @property
    def bridged(self) -> Quantity:
        return self.known + ureg.Quantity(sum(gap.bridged_ah for gap in self.gaps), "A*h")


def trace_charge(
    instants_s: ArrayLike, currents_a: ArrayLike, interval_s: float, exclude: ArrayLike | None = None
) -> TraceCharge:
    """Charge of a logger trace; the samples marked in `exclude` are left out, exact duplicates are dropped.

    Equation: Q [A·h] = Σ (I(i) + I(i+1)) [A]/2·(t(i+1) − t(i)) [s] / 3600; a gap adds 0 to max|I|·Δt
    Errors: lists of unequal length; values that are no numbers; an interval of zero or less.
    Source: trapezoidal rule (any text on numerical integration); the gap rule is this register’s.

    >>> trace = trace_charge([0, 60, 120, 600], [1.0, 1.0, 1.0, 1.0], interval_s=60)
    >>> round(trace.known.magnitude * 60, 6), round(trace.most.magnitude * 60, 6)
    (2.0, 10.0)
    """
    if not (np.isfinite(interval_s) and interval_s > 0):
        raise ChemistryError("interval", "must be more than zero seconds")
    times, currents, dropped = _samples(instants_s, currents_a, exclude)
    spans = np.diff(times)
    areas_ah = currents[:-1] + currents[1:]
    areas_ah *= spans  # in place: of millions of samples each new array costs as much as the sum
    areas_ah /= 2 * SECONDS_PER_HOUR
    gaps = gaps_among(spans, GAP_INTERVALS * interval_s)
    bridged_ah = areas_ah[gaps]
    areas_ah[gaps] = 0.0
    most_ah = np.maximum(np.abs(currents[gaps]), np.abs(currents[gaps + 1])) * spans[gaps] / SECONDS_PER_HOUR
    return TraceCharge(
        known=ureg.Quantity(float(areas_ah.sum()), "A*h"),
        gaps=tuple(
            Gap(float(times[i]), float(times[i + 1]), float(most), float(bridged))
            for i, most, bridged in zip(gaps, most_ah, bridged_ah, strict=True)
        ),
        duplicate_count=dropped,
    )


def gaps_among(spans_s: Floats, longest_s: float) -> NDArray[np.intp]:
    """Places of the spans that are longer than this in whole seconds; where the longest is not, none is.

    Equation: rint(Δt [s]) > Δt₁ [s]
    Errors: none; no span at all has none.
    Source: rule of this register: inclusive in whole seconds.

    >>> gaps_among(np.array([60.0, 120.4, 121.0]), 120.0).tolist()
    [2]
    """
    if not spans_s.size or np.rint(spans_s.max()) <= longest_s:
        return np.empty(0, dtype=np.intp)
    return np.flatnonzero(np.rint(spans_s) > longest_s)


@formula(
    CHARGE,
    reading_before=CHARGE.called("Q₁", "meter before"),
    reading_after=CHARGE.called("Q₂", "meter after"),
)
def meter_charge(reading_before: Quantity, reading_after: Quantity) -> Quantity:
    """Charge that an ampere-hour meter counted between two readings.

    Equation: Q [A·h] = Q₂ [A·h] − Q₁ [A·h]
    Errors: a later reading below the earlier one, as when the meter was set back to zero between them.
    Source: a counter’s difference.

    >>> round(meter_charge(ureg.Quantity(655.8, "A*h"), ureg.Quantity(664.73, "A*h")).magnitude, 2)
    8.93
    """
    if above(reading_before, reading_after):
        raise ChemistryError(
            "reading after", "is below the earlier reading; if the meter was reset, enter it as two stretches"
        )
    return reading_after - reading_before


def _samples(instants_s: ArrayLike, currents_a: ArrayLike, exclude: ArrayLike | None) -> tuple[Floats, Floats, int]:
    times, currents = np.asarray(instants_s, dtype=float), np.asarray(currents_a, dtype=float)
    if times.ndim != 1 or times.shape != currents.shape:
        raise ChemistryError("currents", "give one current for each instant")
    if exclude is not None:
        keep = ~np.asarray(exclude, dtype=bool)
        if keep.shape != times.shape:
            raise ChemistryError("exclude", "say for each sample whether it is left out")
        times, currents = times[keep], currents[keep]
    if not (np.isfinite(times.sum()) and np.isfinite(currents.sum())):
        raise ChemistryError("trace", "holds values that are no numbers; leave those samples out")
    if np.all(times[1:] > times[:-1]):
        return times, currents, 0
    order = np.lexsort((currents, times))
    times, currents = times[order], currents[order]
    same = np.append(False, (np.diff(times) == 0) & (np.diff(currents) == 0))[: times.size]
    return times[~same], currents[~same], int(same.sum())
