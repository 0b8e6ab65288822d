"""What a page needs to echo a typed number in the other usual unit without asking the server."""

from records.units.choices import CHOICES, unit_choice
from records.units.factors import from_canonical, to_canonical
from records.units.showing import OTHER_UNIT


def echo_table(suffix: str) -> dict[str, tuple[float, float, str]]:
    """Offered unit -> (factor, offset, unit to show): the other usual or the column's own; {} where none is.

    >>> echo_table("_degc")["°C"]
    (1.8, 32.0, '°F')
    >>> echo_table("_v")
    {}
    """
    if suffix not in OTHER_UNIT:
        return {}
    own = CHOICES[suffix][0].symbol
    return {choice.symbol: _line(suffix, choice.symbol, own) for choice in CHOICES[suffix]}


def _line(suffix: str, symbol: str, own: str) -> tuple[float, float, str]:
    """Two points make the line: shown = factor · typed + offset."""
    shown = OTHER_UNIT[suffix] if symbol == own else own
    typed_in, shown_in = unit_choice(suffix, symbol), unit_choice(suffix, shown)
    offset, at_one = (from_canonical(to_canonical(x, typed_in, suffix), shown_in, suffix) for x in (0.0, 1.0))
    return float(f"{at_one - offset:.12g}"), float(f"{offset:.12g}"), shown_in.symbol
