"""Every derived figure opens to its working: formula, inputs, constants with source, result with ±."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from pint import Quantity

from process.chemistry.constants import FARADAY, Constant
from process.chemistry.errors import ChemistryError
from process.chemistry.formula import Formula
from process.chemistry.metals import Ion
from process.chemistry.terms import Term, in_unit, pretty, unit_named
from records.units import ureg
from records.units.showing import MINUS

# A symbol of an equation, its exponent left out; a product over a list counts as one.
LETTER = re.compile(r"Π\(1\+c\)|[^\W\d_][^\W²³]*")
NOISE = 1e-9  # of the figure: far below any ±, far above the rounding of a float


@dataclass(frozen=True)
class Entry:
    """One line of a working: an input, a constant or the result."""

    symbol: str
    label: str
    quantity: Quantity | tuple[Quantity, ...]
    unit: str
    evidence: str = ""
    source: str = ""
    digit_count: int = 6

    @cached_property
    def text(self) -> str:
        if isinstance(self.quantity, tuple):
            return "; ".join(written(each, self.unit) for each in self.quantity)
        return written(self.quantity, self.unit, self.digit_count)

    @property
    def uncertainty(self) -> float | None:
        """One standard uncertainty in `unit`, or None where the figure carries none."""
        magnitude: Any = getattr(self.quantity, "magnitude", None)
        return float(magnitude.std_dev) if hasattr(magnitude, "std_dev") else None

    @property
    def carries_doubt(self) -> bool:
        each = self.quantity if isinstance(self.quantity, tuple) else (self.quantity,)
        return any(getattr(quantity.magnitude, "std_dev", 0.0) for quantity in each)


@dataclass(frozen=True)
class Working:
    """How one figure was computed, ready to be shown or printed."""

    title: str
    equation: str
    inputs: tuple[Entry, ...]
    constants: tuple[Entry, ...]
    result: Entry
    source: str
    written_out: str = ""  # the numbers put in, where a sum is too long for letter by letter

    @cached_property
    def substitution(self) -> str:
        """The equation with its numbers and the result; written when it is asked for: many a figure is never opened."""
        return f"{self.written_out or _put_in(self.equation, (*self.inputs, *self.constants))} = {self.result.text}"

    @property
    def quantity(self) -> Quantity:
        assert isinstance(self.result.quantity, Quantity)
        return self.result.quantity

    @property
    def doubt(self) -> str:
        """What the ± of the result is, and whose share is missing from it because nobody stated it."""
        if not self.result.uncertainty:
            return ""
        silent = dict.fromkeys(each.symbol for each in self.inputs if each.unit and not each.carries_doubt)
        lacking = f"; of {', '.join(silent)} none was stated, so theirs is not in it" if silent else ""
        return f"± is one standard uncertainty{lacking}."


def worked(function: Callable[..., Any], *, evidence: Mapping[str, str] | None = None, **inputs: Any) -> Working:
    """Compute a figure and keep its working.

    Equation: that of the function [its units].
    Errors: those of the function; a function that is no formula.
    Source: that of the function.

    >>> from process.chemistry.faraday import charge_passed
    >>> worked(charge_passed, current=ureg.Quantity(2.5, "A"), time=ureg.Quantity(35, "min")).substitution
    'Q = 2.5 A × 0.583333 h = 1.45833 A·h'
    """
    known = getattr(function, "formula", None)
    if not isinstance(known, Formula):
        raise ChemistryError("function", f"{function.__name__} is no formula, so it has no working to show")
    answer = _without_noise(function(**inputs))
    given = known.bind(**inputs)
    metal = next((value for value in given.values() if isinstance(value, Ion)), None)
    entries = _inputs(known, given, evidence or {})
    constants = tuple(_entry(each) for each in _constants(known, metal))
    result = Entry(known.result.symbol, known.result.label, answer, known.result.unit)
    return Working(known.title, known.equation, entries, constants, result, known.source)


def _without_noise(answer: Quantity) -> Quantity:
    """Where an uncertainty cancels out, rounding leaves a trace of it; that trace is no ±."""
    spread = getattr(answer.magnitude, "std_dev", 0.0)
    if 0 < spread <= NOISE * abs(answer.magnitude.nominal_value):
        return ureg.Quantity(answer.magnitude.nominal_value, answer.units)
    return answer


def _inputs(known: Formula, given: Mapping[str, Any], evidence: Mapping[str, str]) -> tuple[Entry, ...]:
    return tuple(
        Entry(term.symbol, term.label, _converted(value, term), term.unit, evidence.get(name, ""))
        for name, value in given.items()
        if (term := known.terms[name]) and not isinstance(value, Ion)
    )


def _converted(value: Any, term: Term) -> Quantity | tuple[Quantity, ...]:
    if term.many:
        return tuple(in_unit(ureg.Quantity(each), unit_named(term.unit)) for each in value)
    return in_unit(ureg.Quantity(value), unit_named(term.unit))


def _constants(known: Formula, metal: Ion | None) -> list[Constant]:
    """The formula’s constants in order; k brings what it is made of."""
    found: list[Constant] = []
    for each in known.constants:
        if isinstance(each, Constant):
            found.append(each)
        elif metal is not None:
            found.append(metal.fact(each))
            found += [metal.fact("M"), metal.fact("z"), FARADAY] if each == "k" else []
    return found


def _entry(constant: Constant) -> Entry:
    quantity = in_unit(constant.quantity, unit_named(constant.unit))
    return Entry(constant.symbol, constant.label, quantity, constant.unit, source=constant.source, digit_count=7)


def _put_in(equation: str, entries: tuple[Entry, ...]) -> str:
    """The equation with each letter on its right-hand side replaced by its value; π, Σ and Π stay."""
    values = {entry.symbol: entry for entry in entries}
    left, _, right = equation.replace("·", " × ").partition(" = ")

    def value(match: re.Match[str]) -> str:
        entry = values.get(match.group())
        return _bracketed(entry, right[match.end() : match.end() + 1]) if entry else match.group()

    return f"{left} = {LETTER.sub(value, right)}"


def _bracketed(entry: Entry, following: str) -> str:
    if isinstance(entry.quantity, tuple):
        return _listed(entry.symbol, entry.quantity, entry.unit)
    needs = following in ("²", "³") or "/" in entry.unit or entry.text.startswith(MINUS)
    return f"({entry.text})" if needs else entry.text


def _listed(symbol: str, quantities: tuple[Quantity, ...], unit: str) -> str:
    """A sum, a product or a plain list, written out."""
    if symbol.startswith("Π"):
        factors = [f"(1 + {written(each, unit)})".replace(f"+ {MINUS}", f"{MINUS} ") for each in quantities]
        return factors[0] if len(factors) == 1 else f"({' × '.join(factors)})"
    between = " + " if symbol.startswith("Σ") else "; "
    return f"({between.join(written(each, unit) for each in quantities)})"


def written(quantity: Quantity, unit: str, digit_count: int = 6) -> str:
    """A figure to some significant digits, with its unit and, where it carries one, its ±.

    >>> written(ureg.Quantity(0.804, "dm**2"), "dm**2")
    '0.804 dm²'
    """
    magnitude = in_unit(quantity, unit_named(unit)).magnitude
    if getattr(magnitude, "std_dev", 0):
        number = f"({magnitude:.2uf})".replace("+/-", " ± ")
    else:
        number = f"{getattr(magnitude, 'nominal_value', magnitude):.{digit_count}g}"
    return f"{number} {pretty(unit)}".rstrip().replace("-", MINUS)
