"""A rail whose cathodes change while the run goes on: segments with a constant set of cathodes."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import ArrayLike
from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.formula import formula
from process.chemistry.series import charge_at
from process.chemistry.shares import GAIN, PIECE, UNEVEN_LIMIT
from process.chemistry.terms import AREA, CHARGE, CURRENT_DENSITY, TIME, Rule, Term


@dataclass(frozen=True)
class Segment:
    """From one change of the rail to the next; `present` are the cathodes that hang there, counted from 0."""

    from_s: float
    to_s: float
    present: tuple[int, ...]
    charge_ah: float
    energised_h: float


def segments_of(
    instants_s: ArrayLike, currents_a: ArrayLike, until_s: float, stays_s: Sequence[tuple[float, float]]
) -> tuple[Segment, ...]:
    """The run cut wherever a cathode was hung in or taken out; `stays_s` says from when to when each one hung there.

    Equation: Q(s) [A·h] = Q(end of s) [A·h] − Q(start of s) [A·h]
    Errors: those of sheet_charge; a stay that ends before it begins.
    Source: the charge of a sheet is additive; definition Q = ∫I·dt.

    >>> [(s.present, s.charge_ah) for s in segments_of([0, 7200], [1.0, 0.0], 7200, [(0, 7200), (0, 3600)])]
    [((0, 1), 1.0), ((0,), 1.0)]
    """
    times = np.asarray(instants_s, dtype=float)
    if times.size == 0:
        return ()
    if any(begin > end for begin, end in stays_s):
        raise ChemistryError("stays", "a cathode cannot be taken out before it was hung in")
    start = float(times[0])
    inner = {instant for stay in stays_s for instant in stay if start < instant < until_s}
    edges = sorted({start, float(until_s), *inner})
    passed = charge_at(times, currents_a, edges)
    flows = (np.asarray(currents_a, dtype=float) > 0).astype(float)
    energised = charge_at(times, flows, edges)
    return tuple(
        Segment(begin, end, _present(stays_s, begin, end), float(after - before), float(on_after - on_before))
        for (begin, end), (before, after), (on_before, on_after) in zip(
            pairwise(edges), pairwise(passed), pairwise(energised), strict=True
        )
        if end > begin
    )


def _present(stays_s: Sequence[tuple[float, float]], begin: float, end: float) -> tuple[int, ...]:
    return tuple(index for index, (first, last) in enumerate(stays_s) if first <= begin and last >= end)


@formula(
    PIECE,
    area=AREA,
    charges=CHARGE.several("q", "charge of each segment in which the piece hung"),
    areas=AREA.several("a", "area of all pieces in that segment"),
)
def share_over_segments(area: Quantity, charges: Sequence[Quantity], areas: Sequence[Quantity]) -> Quantity:
    """Charge that a piece takes by its share of the area in each segment in which it hung.

    Equation: Q₁ [A·h] = A [dm²]·Σ(q [A·h] / a [dm²])
    Errors: negative charge; an area of zero or less; lists of unequal length.
    Source: equal current density on one rail, segment by segment; common practice.

    >>> from records.units import ureg
    >>> ah, dm2 = ureg.Quantity(1, "A*h"), ureg.dm**2
    >>> share_over_segments(1 * dm2, [2 * ah, 1 * ah], [2 * dm2, 1 * dm2]).magnitude
    2.0
    """
    if len(charges) != len(areas):
        raise ChemistryError("areas", "give one area for each segment")
    parts = [charge / whole for charge, whole in zip(charges, areas, strict=True)]
    return area * sum(parts[1:], start=parts[0])


@formula(
    CURRENT_DENSITY.called("j", "mean current density"),
    charge=CHARGE,
    area=AREA,
    energised_time=TIME.called("t", "time with current", Rule.POSITIVE),
)
def mean_current_density(charge: Quantity, area: Quantity, energised_time: Quantity) -> Quantity:
    """Mean current density while current flowed.

    Equation: j [A/dm²] = Q [A·h] / (A [dm²]·t [h])
    Errors: negative charge; an area or a time of zero or less.
    Source: definition of the current density.

    >>> from records.units import ureg
    >>> mean_current_density(ureg.Quantity(3, "A*h"), 2 * ureg.dm**2, 1 * ureg.h).magnitude
    1.5
    """
    return charge / (area * energised_time)


@formula(
    Term("x", "growth off the mean of the rail", "pct", Rule.ANY),
    mass=GAIN,
    charge=CHARGE.called("Q", "its share of the charge, by area", Rule.POSITIVE),
    masses=GAIN.several("m₁", "masses gained by all pieces"),
    charges=CHARGE.called("Q", "share", Rule.POSITIVE).several("Q₁", "shares of all pieces"),
)
def growth_deviation(
    mass: Quantity, charge: Quantity, masses: Sequence[Quantity], charges: Sequence[Quantity]
) -> Quantity:
    """How far a piece’s growth lies from the mean of the rail.

    The charges are shared by area, so that a piece that hung there for half of the time is held against that;
    with one constant set of cathodes this is the deviation of m/A.

    Equation: x [%] = (m [g] / Q [A·h]) / mean(m₁ [g] / Q₁ [A·h]) − 1
    Errors: lists of unequal length; a mass or a charge of zero or less.
    Source: equal current density on one rail; a deviation over 10 % is looked into, rule of this register.

    >>> from records.units import ureg
    >>> ah, g = ureg.Quantity(1, "A*h"), ureg.g
    >>> round(float(growth_deviation(11 * g, ah, [11 * g, 9 * g], [ah, ah]).m_as("pct")), 6)
    10.0
    """
    if len(masses) != len(charges):
        raise ChemistryError("charges", "give one share of the charge for each mass")
    grown = [m / q for m, q in zip(masses, charges, strict=True)]
    mean = sum(grown[1:], start=grown[0]) / len(grown)  # with its ±: what all pieces share cancels out
    return mass / charge / mean - 1


def is_uneven(deviation: float) -> bool:
    """Whether a piece grew so far off the mean that contact, distance and area are to be looked at.

    Equation: |x [1]| > 0.10
    Errors: none.
    Source: rule of this register (UNEVEN_LIMIT).

    >>> is_uneven(0.02), is_uneven(-0.12)
    (False, True)
    """
    return abs(deviation) > UNEVEN_LIMIT
