"""Reading number and unit out of what a person typed. pint never sees that text: it would do sums with it."""

import math
import re
from dataclasses import dataclass

from records.units.choices import find_unit, unit_choice
from records.units.errors import UnitsError
from records.units.factors import spread_to_canonical, to_canonical
from records.units.offered import UnitChoice

LONGEST_TEXT = 64

_NUMBER = r"[0-9.,' ]*[0-9][.,]?(?:[eE][+-]?[0-9]+)?"
_UNIT = '[A-Za-z\u00a4\u00d7\u00b5\u03bc\u03a9\u2126°º"%‰][A-Za-z\u00b5\u03bc\u03a9\u2126°ºé%0-9²³^*·/() ]*'
_TYPED = re.compile(
    rf"(?P<number>[+-]?{_NUMBER}) ?(?P<unit>{_UNIT})?(?:(?:±|\+/-|\+-) ?(?P<margin>{_NUMBER} ?(?:{_UNIT})?))?"
)
_MARGIN = re.compile(rf"(?P<number>{_NUMBER}) ?(?P<unit>{_UNIT})?")
_TOO_SMALL = "“{}” is too small to be kept: check the exponent and the unit."
_PLAIN = re.compile(r"[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?")
# One comma and exactly three digits after a whole number: a decimal comma or a thousand?
_DOUBTFUL = re.compile(r"[+-]?[1-9][0-9]{0,2},[0-9]{3}")
# Spaces that only look different, and the typographer's minus.
_ALIKE = str.maketrans({"\u00a0": " ", "\u2007": " ", "\u2009": " ", "\u202f": " ", "\t": " ", "−": "-", "’": "'"})


@dataclass(frozen=True, slots=True)
class Parsed:
    """A typed quantity: the number and unit as written, and the plain number for the column."""

    number: float
    unit: str
    canonical: float
    plus_minus: float | None
    text: str
    kind: str = ""
    method: str = ""

    def __float__(self) -> float:
        return self.canonical

    def as_typed(self) -> dict[str, object]:
        """What the row's `as_typed` column keeps for one field; ± stands in the column's unit."""
        return {
            "number": self.number,
            "unit": self.unit,
            "text": self.text,
            "kind": self.kind,
            "method": self.method,
            "plus_minus": self.plus_minus,
        }


def parse(text: str, suffix: str, unit: str | None = None) -> Parsed:
    """The quantity in a person's text, for a column with this suffix; a unit in it overrides the selected.

    >>> parse("0,35 A", "_a").canonical, parse("2.3 in ± 0.01", "_mm").plus_minus
    (0.35, 0.254)
    """
    tidy = _tidy(text)
    match = _TYPED.fullmatch(tidy)
    if not match:
        raise UnitsError(_unreadable(tidy, suffix))
    choice, spread = _unit_and_margin(match, suffix, unit)
    number = _number(match["number"])
    canonical = _finite(to_canonical(number, choice, suffix), tidy)
    if number and not canonical and suffix != "_degc":
        raise UnitsError(_TOO_SMALL.format(tidy[:20]))
    plus_minus = margin(spread, number, choice.symbol, suffix) if spread else None
    return Parsed(number, choice.symbol, canonical, plus_minus, text.strip())


def margin(text: str, number: float, unit: str, suffix: str) -> float:
    """A typed ± in the column's unit: "0.02", "0.02 mm" or, as a share of the number, "10 %".

    >>> margin("10 %", 2.0, "A", "_a"), margin("9 °F", 68.0, "°F", "_degc")
    (0.2, 5.0)
    """
    match = _MARGIN.fullmatch(_tidy(text).removeprefix("±").strip())
    if not match:
        raise UnitsError(f"Write the ± as a plain number, such as 0.02, or as a share, such as 5 %, not “{text[:20]}”.")
    spread = _number(match["number"])
    spelling = (match["unit"] or "").strip()
    if spelling == "%" and suffix != "_pct":
        if suffix in ("_degc", "_ph"):
            raise UnitsError("Write the ± in the unit of the value, such as 0.5, since a share of it has no meaning.")
        return _finite(abs(to_canonical(number, unit_choice(suffix, unit), suffix)) * spread / 100, text)
    choice = find_unit(spelling, suffix, unit) if spelling else unit_choice(suffix, unit)
    return _finite(spread_to_canonical(spread, choice, suffix), text)


def _unit_and_margin(match: re.Match[str], suffix: str, selected: str | None) -> tuple[UnitChoice, str]:
    """The unit of the number and the text of its ±; in "58.40 ± 0.02 mm" the unit after both serves both."""
    spelling, spread = (match["unit"] or "").strip(), (match["margin"] or "").strip()
    behind = _MARGIN.fullmatch(spread)
    after = (behind["unit"] or "").strip() if behind else ""
    if not spelling and after and (after != "%" or suffix == "_pct"):
        spelling = after
    return find_unit(spelling, suffix, selected) if spelling else unit_choice(suffix, selected), spread


def _tidy(text: str) -> str:
    if len(text) > LONGEST_TEXT:
        raise UnitsError(f"Write number and unit in at most {LONGEST_TEXT} characters; remarks belong in the notes.")
    tidy = re.sub(" +", " ", text.translate(_ALIKE)).strip(" \r\n")
    if not tidy:
        raise UnitsError("Write a number in figures, such as 1.21.")
    return tidy


def _unreadable(tidy: str, suffix: str) -> str:
    symbol = unit_choice(suffix, None).symbol
    return f"“{tidy[:20]}” cannot be read: write one number in figures, then its unit, such as “1.21 {symbol}”."


def _number(written: str) -> float:
    """The float of a written number; decimal point or comma, no marks between thousands."""
    written = written.strip()
    mantissa, e, exponent = written.replace("E", "e").partition("e")
    if _DOUBTFUL.fullmatch(mantissa):
        decimal, whole = mantissa.replace(",", "."), mantissa.replace(",", "")
        raise UnitsError(f"“{mantissa}” can be read in two ways: write {decimal} or {whole}.")
    candidate = mantissa.replace(",", ".") + e + exponent
    if not _PLAIN.fullmatch(candidate):
        raise UnitsError(_advice(mantissa))
    value = _finite(float(candidate), written)
    if value == 0 and re.search("[1-9]", mantissa):
        raise UnitsError(_TOO_SMALL.format(written[:20]))
    return value


def _advice(mantissa: str) -> str:
    """What to write instead of 1.000,5 or 1,000.5 or 1 000."""
    marks = [character for character in mantissa if character in ".,"]
    decimal = marks[-1] if len(set(marks)) == 2 and marks.count(marks[-1]) == 1 else ""
    whole, _, fraction = mantissa.rpartition(decimal) if decimal else (mantissa, "", "")
    whole = re.sub(r"[^0-9+-]", "", whole)
    fraction = re.sub("[^0-9]", "", fraction)
    written = f"{whole}.{fraction}" if fraction else whole
    return f"Write the number without marks between the thousands, such as {written}."


def _finite(value: float, written: str) -> float:
    if not math.isfinite(value):
        raise UnitsError(f"“{written[:20]}” is too large to be kept: check the exponent and the unit.")
    return value
