"""Whether a bath’s figure lies within its limits: target, warning, stop."""

from dataclasses import dataclass
from enum import StrEnum

from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.terms import nominal


class Verdict(StrEnum):
    """What an analysis means for the next start."""

    IN_LIMITS = "in limits"
    WARNING = "warning"
    STOP = "stop"


@dataclass(frozen=True)
class Limits:
    """Bounds in one unit; None leaves that side open. The bounds themselves still pass."""

    unit: str
    target: float | None = None
    warn_below: float | None = None
    warn_above: float | None = None
    stop_below: float | None = None
    stop_above: float | None = None


def verdict(found: Quantity, limits: Limits) -> Verdict:
    """Judge a figure of an analysis against the bath’s own limits.

    Equation: stop if outside the stop bounds [unit of the limits], else warning if outside the warning bounds
    Errors: a figure of another kind than the limits, or no number.
    Source: the limits belong to each bath; their defaults are common practice, from memory.

    >>> from records.units import ureg
    >>> salt = Limits("g/L", 210, 190, 230, 170, 260)
    >>> str(verdict(ureg.Quantity(209.8, "g/L"), salt)), str(verdict(ureg.Quantity(2034, "g/L"), salt))
    ('in limits', 'stop')
    """
    if not found.is_compatible_with(limits.unit):
        raise ChemistryError("found", f"{found:~P} cannot be compared with limits in {limits.unit}")
    value = float(nominal(found.m_as(limits.unit)))
    if value != value:
        raise ChemistryError("found", "is not a number; enter the analysis again")
    if _outside(value, limits.stop_below, limits.stop_above):
        return Verdict.STOP
    if _outside(value, limits.warn_below, limits.warn_above):
        return Verdict.WARNING
    return Verdict.IN_LIMITS


def _outside(value: float, low: float | None, high: float | None) -> bool:
    return (low is not None and value < low) or (high is not None and value > high)
