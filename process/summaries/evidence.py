"""A row's plain number as a quantity, with the ± that was entered with it."""

from pint import Quantity
from uncertainties import ufloat

from records.models import Tracked
from records.units import SUFFIXES, suffix_of, ureg


def quantity(row: Tracked, field: str) -> Quantity | None:
    """The column as a quantity in its unit; None where nothing was entered."""
    value = getattr(row, field)
    if value is None:
        return None
    spread = row.plus_minus(field)
    return ureg.Quantity(ufloat(value, spread) if spread else value, SUFFIXES[suffix_of(field)])
