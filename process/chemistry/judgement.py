"""What a measured efficiency means: the balance tells the truth, so a result is judged and never refused."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.terms import EFFICIENCY, MASS, Rule, nominal

SETTLED_SPAN = timedelta(days=7)
SETTLED_SHARE = 0.0002  # of the last mass
CORE_SPAN = timedelta(hours=24)  # of plaster in a drying cupboard, before it is waterproofed
CORE_SHARE = 0.001  # of the last mass
ROUNDING = 1 + 1e-9  # so that exactly 0.02 % still agrees, whatever the last binary digit


class Band(StrEnum):
    """Bands of cathode efficiency in acid copper; common practice and rules of this register."""

    REJECT = "reject"
    LOW = "low"
    USUAL = "usual"
    DOUBTFUL = "doubtful"
    IMPOSSIBLE = "impossible or absorbed"
    ABSORBED = "absorbed"


LOWEST_KEPT = 0.80
LOWEST_USUAL = 0.95
HIGHEST_USUAL = 1.005
HIGHEST_DOUBTFUL = 1.01


@dataclass(frozen=True)
class Weighing:
    """One weighing of a piece that is drying."""

    instant: datetime
    mass: Quantity


def judge_efficiency(
    efficiency: Quantity | float, *, on_core: bool = False, weighings: Sequence[Weighing] = ()
) -> Band:
    """Band of a measured efficiency; on a core all above 100 % is absorbed liquid until the mass settles.

    Equation: η [1] < 0.80 reject, < 0.95 low, ≤ 1.005 usual, ≤ 1.01 doubtful, above impossible or absorbed
    Errors: a negative efficiency, or one that is no number.
    Source: bands of common practice, from memory; a museum may keep its own.

    >>> str(judge_efficiency(0.988)), str(judge_efficiency(0.740)), str(judge_efficiency(1.005, on_core=True))
    ('usual', 'reject', 'absorbed')
    """
    EFFICIENCY.check("efficiency", efficiency)
    value = float(nominal(efficiency.m_as("") if isinstance(efficiency, Quantity) else efficiency))
    if on_core and value > 1 and not has_settled(weighings):
        return Band.ABSORBED
    if value < LOWEST_USUAL:
        return Band.REJECT if value < LOWEST_KEPT else Band.LOW
    if value > HIGHEST_USUAL:
        return Band.IMPOSSIBLE if value > HIGHEST_DOUBTFUL else Band.DOUBTFUL
    return Band.USUAL


def has_settled(weighings: Sequence[Weighing], span: timedelta = SETTLED_SPAN, share: float = SETTLED_SHARE) -> bool:
    """Whether two weighings at least seven days apart agree within 0.02 %, the later one being the last.

    Equation: |m(last) − m(earlier)| [g] / m(last) [g] ≤ 0.0002, with t(last) − t(earlier) ≥ 7 days
    Errors: a mass of zero or less; instants without time zone.
    Source: rule of this register (SETTLED_SPAN, SETTLED_SHARE).

    >>> has_settled([])
    False
    """
    for weighing in weighings:
        MASS.called("m", "mass", Rule.POSITIVE).check("weighings", weighing.mass)
        if weighing.instant.tzinfo is None:
            raise ChemistryError("weighings", "need instants with their offset from UTC")
    ordered = sorted(weighings, key=lambda each: each.instant)
    if not ordered:
        return False
    last = ordered[-1]
    return any(
        abs(float(nominal(((each.mass - last.mass) / last.mass).m_as("")))) <= share * ROUNDING
        for each in ordered
        if last.instant - each.instant >= span
    )


def is_dry(weighings: Sequence[Weighing]) -> bool:
    """Whether a core in its drying cupboard has come to constant mass: two weighings a day apart within 0.1 %.

    Equation: |m(last) − m(earlier)| [g] / m(last) [g] ≤ 0.001, with t(last) − t(earlier) ≥ 24 h
    Errors: a mass of zero or less; instants without time zone.
    Source: after EN ISO 12570, clause on constant mass (0.1 % in 24 h), from memory; plaster not above 45 °C.

    >>> is_dry([])
    False
    """
    return has_settled(weighings, CORE_SPAN, CORE_SHARE)
