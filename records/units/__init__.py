"""Units at the edge: the one pint registry, the closed list of column suffixes, reading and showing."""

from records.units.choices import find_unit, unit_choice
from records.units.entered import decimals_written
from records.units.errors import UnitsError
from records.units.factors import from_canonical, spread_from_canonical, spread_to_canonical, to_canonical
from records.units.offered import CHOICES, UnitChoice
from records.units.reach import BARE, COUNT, Reach, reach_of
from records.units.reading import LONGEST_TEXT, Parsed, margin, parse
from records.units.registry import SUFFIXES, suffix_of, ureg
from records.units.showing import (
    MIXED,
    MONEY_SIGN,
    OTHER_UNIT,
    SHOW_DIGITS,
    figure,
    in_currency,
    other_unit,
    plain,
    show,
)

__all__ = [
    "BARE",
    "CHOICES",
    "COUNT",
    "LONGEST_TEXT",
    "MIXED",
    "MONEY_SIGN",
    "OTHER_UNIT",
    "SHOW_DIGITS",
    "SUFFIXES",
    "Parsed",
    "Reach",
    "UnitChoice",
    "UnitsError",
    "decimals_written",
    "figure",
    "find_unit",
    "from_canonical",
    "in_currency",
    "margin",
    "other_unit",
    "parse",
    "plain",
    "reach_of",
    "show",
    "spread_from_canonical",
    "spread_to_canonical",
    "suffix_of",
    "to_canonical",
    "unit_choice",
    "ureg",
]
