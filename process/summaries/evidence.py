"""A row's plain number as a quantity, with the ± that was entered with it."""

from pint import Quantity
from uncertainties import ufloat

from records.models import Tracked
from records.units import SUFFIXES, suffix_of, ureg


def quantity(row: Tracked, field: str) -> Quantity | None:
    """The column as a quantity in its unit; None where nothing was entered.

    Asked for twice it is one and the same doubtful number, so that what it brings to both sides of a formula cancels.
    """
    value = getattr(row, field)
    if value is None:
        return None
    spread = row.plus_minus(field)
    if spread:
        known = row.__dict__.setdefault("_doubtful", {})
        value = known.setdefault((field, value, spread), ufloat(value, spread))
    return ureg.Quantity(value, SUFFIXES[suffix_of(field)])
