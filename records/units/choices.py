"""Which unit a person's spelling names in a field."""

from functools import cache

from records.units.errors import UnitsError
from records.units.offered import CHOICES, UnitChoice

# Superscripts, powers and dots are spelling; so are the two mu and the two omega of Unicode.
_FOLDED = str.maketrans(
    {"²": "2", "³": "3", "^": "", "*": "", "·": "", " ": "", "\u03bc": "\u00b5", "\u2126": "\u03a9", "º": "°"}
)


def _fold(spelling: str) -> str:
    """One form for the ways to write a unit.

    >>> _fold("A/dm**2") == _fold("A / dm²") == _fold("A/dm^2")
    True
    """
    return spelling.translate(_FOLDED).replace("um", "\u00b5m")


@cache
def _spellings(suffix: str) -> dict[str, UnitChoice]:
    """Every folded spelling in this field."""
    table: dict[str, UnitChoice] = {}
    for choice in CHOICES[suffix]:
        for spelling in (choice.symbol, *choice.aliases):
            table.setdefault(_fold(spelling), choice)
    return table


def unit_choice(suffix: str, symbol: str | None) -> UnitChoice:
    """The offered unit with this symbol; the column's own for none."""
    return find_unit(symbol, suffix) if symbol else CHOICES[suffix][0]


def find_unit(text: str, suffix: str, selected: str | None = None) -> UnitChoice:
    """The unit that a spelling names in this field; `selected` settles whose ounce or gallon is meant."""
    folded = _fold(text)
    table = _spellings(suffix)
    found = table.get(folded) or _without_case(folded, table)
    if found:
        return found
    alike = [choice for choice in CHOICES[suffix] if _unnamed(choice.symbol) == folded.casefold()]
    settled = [choice for choice in alike if choice.symbol == selected]
    if settled:
        return settled[0]
    if alike:
        names = " or ".join(f"“{choice.symbol}”" for choice in alike)
        raise UnitsError(f"There is more than one “{text}”: write {names}.")
    known = ", ".join(choice.symbol for choice in CHOICES[suffix])
    raise UnitsError(f"The unit “{text[:20]}” is not known here: write one of {known}.")


def _without_case(folded: str, table: dict[str, UnitChoice]) -> UnitChoice | None:
    """The same spelling in other letters; a capital M never turns into milli, since it might mean mega."""
    if folded.startswith("M"):
        return None
    lowered = folded.casefold()
    return next((choice for spelling, choice in table.items() if spelling.casefold() == lowered), None)


def _unnamed(symbol: str) -> str:
    """The bare ounce or gallon of a symbol that carries its name in brackets.

    >>> _unnamed("oz/gal (US)"), _unnamed("g")
    ('oz/gal', '')
    """
    bare, bracket, _ = symbol.partition(" (")
    return _fold(bare).casefold() if bracket else ""
