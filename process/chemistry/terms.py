"""The inputs of the formulas: symbol, unit, and what a sensible value is."""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import Enum
from functools import cache
from typing import Any

import numpy as np
from pint import Quantity, Unit

from process.chemistry.errors import ChemistryError
from process.chemistry.metals import Ion
from records.units import ureg


class Rule(Enum):
    """What a value must be; `advice` finishes the sentence “area: …”."""

    ANY = ""
    POSITIVE = "must be more than zero"
    NOT_NEGATIVE = "cannot be negative"
    PLANNED = "a planned efficiency is more than 0 and at most 1 (100 %); an efficiency over 1 can only be a result"
    SHARE = "cannot be below 0 or above 1 (100 %)"
    FRACTION = "must be more than 0 and at most 1 (100 %)"

    def allows(self, values: np.ndarray) -> bool:
        if self is Rule.POSITIVE:
            return bool(np.all(values > 0))
        if self is Rule.NOT_NEGATIVE:
            return bool(np.all(values >= 0))
        if self is Rule.SHARE:
            return bool(np.all((values >= 0) & (values <= 1)))
        if self in (Rule.PLANNED, Rule.FRACTION):
            return bool(np.all((values > 0) & (values <= 1)))
        return True


SIGNS = (("**2", "²"), ("**3", "³"), ("*", "·"), ("um", "µm"), ("deg", "°"), ("pct", "%"), ("money", "¤"))


@cache
def pretty(unit: str) -> str:
    """The unit as people write it.

    >>> pretty("g/(A*h)"), pretty("dm**2"), pretty("um"), pretty("")
    ('g/(A·h)', 'dm²', 'µm', '')
    """
    for plain, written in SIGNS:
        unit = unit.replace(plain, written)
    return unit


@cache
def unit_named(unit: str) -> Unit:
    """The registry’s unit, looked up once: pint reads a text each time it meets one."""
    return ureg.Unit(unit)


def in_unit(quantity: Quantity, unit: Unit) -> Quantity:
    """The quantity itself where it stands in that unit already: most do, and pint converts slowly."""
    return quantity if quantity.units == unit else quantity.to(unit)


@dataclass(frozen=True)
class Term:
    """One letter of an equation."""

    symbol: str
    label: str
    unit: str
    rule: Rule = Rule.NOT_NEGATIVE
    many: bool = False

    def called(self, symbol: str, label: str, rule: Rule | None = None) -> "Term":
        """The same kind of quantity under another letter."""
        return replace(self, symbol=symbol, label=label, rule=rule or self.rule)

    def several(self, symbol: str, label: str) -> "Term":
        """A list of such quantities."""
        return replace(self, symbol=symbol, label=label, many=True)

    def check(self, name: str, value: Any) -> None:
        """Refuse a wrong dimension, a value that is no number, and a value that cannot be."""
        values = value if self.many else (value,)
        if self.many and (isinstance(value, Quantity) or not isinstance(value, Iterable)):
            raise ChemistryError(name, "give a list of values")
        if self.many and not list(values):
            raise ChemistryError(name, "give at least one value")
        for each in values:
            self._check_one(name, each)

    def _check_one(self, name: str, value: Any) -> None:
        written = pretty(self.unit) or "a plain number"
        quantity = value if isinstance(value, Quantity) else _plain(name, value, written)
        unit = unit_named(self.unit)
        if quantity.units != unit and quantity.dimensionality != unit.dimensionality:
            raise ChemistryError(name, f"{quantity:~P} is of the wrong kind; give {self.label} in {written}")
        values = nominal(in_unit(quantity, unit).magnitude)
        if not np.all(np.isfinite(values)):
            raise ChemistryError(name, "is not a finite number; give the value again")
        if not self.rule.allows(values):
            given = f"{np.min(values):g} {pretty(self.unit)}".rstrip()
            raise ChemistryError(name, f"{self.rule.value}; {given} was given")


class IonTerm(Term):
    """The metal, whose figures stand among the constants."""

    def check(self, name: str, value: Any) -> None:
        if not isinstance(value, Ion):
            raise ChemistryError(name, f'{value!r} is no metal; give ion("Cu2+") or another that it knows')


def _plain(name: str, value: Any, written: str) -> Quantity:
    """A bare number stands for a ratio; it fits nothing that has a unit."""
    if value is None or isinstance(value, str | bool):
        raise ChemistryError(name, f"{value!r} is no quantity; give it in {written}")
    return ureg.Quantity(value)


def above(one: Quantity, other: Quantity) -> bool:
    """Whether the best value of one quantity is the greater; how sure it is does not decide.

    >>> above(ureg.Quantity(2, "A*h"), ureg.Quantity(1500, "mA*h"))
    True
    """
    return bool(nominal(one.m_as(other.units)) > nominal(other.magnitude))


def nominal(magnitude: Any) -> np.ndarray:
    """The figures without their ±."""
    if isinstance(magnitude, np.ndarray):
        return magnitude
    value = float(getattr(magnitude, "nominal_value", magnitude))
    spread = float(getattr(magnitude, "std_dev", 0.0))
    return np.asarray(value if math.isfinite(spread) else math.nan)


ION = IonTerm("", "metal", "")
CHARGE = Term("Q", "charge", "A*h")
CURRENT = Term("I", "current", "A")
TIME = Term("t", "time", "h")
MASS = Term("m", "mass", "g")
AREA = Term("A", "area", "dm**2", Rule.POSITIVE)
THICKNESS = Term("d", "thickness", "mm")
LENGTH = Term("D", "length", "mm", Rule.POSITIVE)
CURRENT_DENSITY = Term("j", "current density", "A/dm**2")
RATE = Term("r", "growth rate", "um/h")
PLANNED_EFFICIENCY = Term("η", "planned efficiency", "", Rule.PLANNED)
EFFICIENCY = Term("η", "efficiency", "")
RATIO = Term("x", "ratio", "")
VOLTAGE = Term("U", "voltage", "V")
BATH_VOLUME = Term("V", "volume of bath", "L", Rule.POSITIVE)
SMALL_VOLUME = Term("V", "volume", "mL")
CONCENTRATION = Term("c", "concentration", "g/L")
MOLARITY = Term("c", "concentration of titrant", "mol/L", Rule.POSITIVE)
DENSITY = Term("ρ", "density", "g/cm**3", Rule.POSITIVE)
VOLUME = Term("V", "volume", "cm**3")
EQUIVALENT = Term("k", "electrochemical equivalent", "g/(A*h)")
