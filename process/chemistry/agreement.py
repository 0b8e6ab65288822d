"""Whether a prediction and a measurement agree within what both are worth."""

from dataclasses import dataclass
from enum import StrEnum
from math import hypot
from typing import Any

from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.terms import nominal

COVERAGE = 2.0  # standard uncertainties; about 95 of 100 honest pairs lie within


class Agreement(StrEnum):
    """What the difference means."""

    WITHIN = "agrees within the error"
    BEYOND = "differs by more than the error"
    UNKNOWN = "the ± is not known, so nobody can say"


@dataclass(frozen=True)
class Comparison:
    """A difference with the ± of both sides, in the unit of the measurement."""

    difference: float
    allowed: float | None
    agreement: Agreement


def compare(predicted: Quantity, measured: Quantity) -> Comparison:
    """Set a measurement against a prediction; where one of them has no ±, its error is unknown and not nothing.

    Equation: agrees if |x₁ − x₂| ≤ 2·√(u₁² + u₂²) [unit of the measurement]
    Errors: two quantities of different kinds.
    Source: JCGM 100:2008, 5.1.2 and 6.2, coverage factor 2.

    >>> from uncertainties import ufloat
    >>> from records.units import ureg
    >>> compare(ureg.Quantity(ufloat(208.6, 0.3), "g/L"), ureg.Quantity(ufloat(209.3, 0.3), "g/L")).agreement.value
    'agrees within the error'
    """
    if predicted.dimensionality != measured.dimensionality:
        raise ChemistryError("predicted", "is of another kind than the measurement; compare like with like")
    one, other = predicted.m_as(measured.units), measured.magnitude
    difference = float(nominal(other)) - float(nominal(one))
    spreads = _spread(one), _spread(other)
    if not all(spreads):
        return Comparison(difference, None, Agreement.UNKNOWN)
    allowed = COVERAGE * hypot(*spreads)
    return Comparison(difference, allowed, Agreement.WITHIN if abs(difference) <= allowed else Agreement.BEYOND)


def _spread(magnitude: Any) -> float:
    return float(getattr(magnitude, "std_dev", 0.0))
