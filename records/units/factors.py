"""Factors between the offered units and the unit of the column, asked of pint once and then remembered."""

from functools import cache

from records.units.offered import UnitChoice
from records.units.registry import SUFFIXES, ureg

_TEMPERATURES = {"degC", "degF", "kelvin"}


@cache
def _line(pint_unit: str, canonical: str) -> tuple[float, float]:
    """Factor and offset of canonical = factor * number + offset."""
    if pint_unit in _TEMPERATURES:
        factor = float(ureg.convert(1.0, f"delta_{pint_unit}" if pint_unit != "kelvin" else "kelvin", "delta_degC"))
        return factor, float(ureg.convert(0.0, pint_unit, canonical))
    return float(ureg.convert(1.0, pint_unit, canonical)), 0.0


def to_canonical(number: float, choice: UnitChoice, suffix: str) -> float:
    """The number in the column's unit, without the noise of binary fractions."""
    if choice.pint_unit == SUFFIXES[suffix]:
        return number
    factor, offset = _line(choice.pint_unit, SUFFIXES[suffix])
    return float(f"{factor * number + offset:.15g}")


def from_canonical(value: float, choice: UnitChoice, suffix: str) -> float:
    """The column's number in another unit."""
    if choice.pint_unit == SUFFIXES[suffix]:
        return value
    factor, offset = _line(choice.pint_unit, SUFFIXES[suffix])
    return float(f"{(value - offset) / factor:.15g}")


def spread_to_canonical(spread: float, choice: UnitChoice, suffix: str) -> float:
    """A difference (±) in the column's unit: a temperature's offset plays no part."""
    factor, _ = _line(choice.pint_unit, SUFFIXES[suffix])
    return float(f"{factor * spread:.15g}")


def spread_from_canonical(spread: float, choice: UnitChoice, suffix: str) -> float:
    """A difference (±) of the column's unit in another unit."""
    factor, _ = _line(choice.pint_unit, SUFFIXES[suffix])
    return float(f"{spread / factor:.15g}")
