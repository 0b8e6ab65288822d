"""Showing a column's number with the digits it deserves and its unit after a thin space."""

import math

from records.units.choices import unit_choice
from records.units.factors import from_canonical, spread_from_canonical
from records.units.offered import CHOICES

THIN_SPACE = "\u2009"
MINUS = "\u2212"
MONEY_SIGN = "¤"

# Decimals in the column's own unit (mass 0.01 g, thickness 0.01 mm, skins 0.1 µm, charge 0.01 Ah,
# efficiency 0.1 %, temperature 0.1 °C); a negative figure counts significant digits instead (area: three).
# One rule for pages and papers: never more than these, and fewer where a ± would be left with more than two
# significant digits (the GUM, JCGM 100:2008, 7.2.6); a ± too small for the last digit shown is not written.
SHOW_DIGITS: dict[str, int] = {
    "_a": 2, "_ma": 1, "_v": 2, "_ah": 2, "_ah_l": 2, "_dm2": -3, "_mm": 2, "_um": 1, "_g": 2, "_l": -3,
    "_ml": 2, "_cm3": 2, "_g_l": 1, "_mg_l": 0, "_mol_l": -4, "_g_cm3": 2, "_a_dm2": 2, "_degc": 1, "_h": 1,
    "_s": 0, "_ohm": -3, "_deg": 0, "_pct": 1, "_um_h": 1, "_lx": 0, "_ph": 1,
    "_kwh": 2, "_ratio": 2, "_a_l": 2, "_money": 2, "_money_h": 2, "_money_kg": 2, "_money_kwh": 2,
    "_be": 1, "_hpa": 1, "_ms_cm": -3, "_permille": 0, "_uvs_cm": 1,
}  # fmt: skip

# The other usual unit, echoed under a field.
OTHER_UNIT = {
    "_a_dm2": "A/ft²", "_dm2": "in²", "_degc": "°F", "_g_l": "oz/gal (US)", "_mm": "in", "_um": "thou",
    "_g": "oz (avoirdupois)", "_l": "gal (US)",
}  # fmt: skip


# Where the trade mixes two units, both stand on the saved page too.
MIXED = {"_a_dm2", "_dm2", "_degc", "_g_l", "_mm", "_um", "_l"}
ECHO_DIGITS = 3  # significant: an echo is there to be recognised, not to be copied
THIN_IN = 0.1  # below it the trade says thou


def in_currency(text: str, currency: str) -> str:
    """A text about money with the currency instead of the sign that stands for any.

    >>> in_currency("42 ¤/h", "EUR")
    '42 EUR/h'
    """
    return text.replace(MONEY_SIGN, currency) if currency else text


def show(
    value: float,
    suffix: str,
    unit: str | None = None,
    digits: int | None = None,
    plus_minus: float | None = None,
) -> str:
    """The quantity as text; `value` and `plus_minus` in the column's unit, `digits` decimals of the shown.

    >>> show(58.4, "_mm").replace(THIN_SPACE, " "), show(-0.08, "_pct", digits=2).replace(THIN_SPACE, " ")
    ('58.40 mm', '−0.08 %')
    """
    number, symbol = figure(value, suffix, unit, digits, plus_minus)
    if symbol == "pH":
        return f"pH{THIN_SPACE}{number}"
    return f"{number}{symbol}" if symbol == "°" else f"{number}{THIN_SPACE}{symbol}"


def figure(
    value: float,
    suffix: str,
    unit: str | None = None,
    digits: int | None = None,
    plus_minus: float | None = None,
) -> tuple[str, str]:
    """Number and unit apart, for a page that sets the unit in lighter ink."""
    choice = unit_choice(suffix, unit)
    shown = from_canonical(value, choice, suffix)
    spread = None if plus_minus is None else abs(spread_from_canonical(plus_minus, choice, suffix))
    decimals = digits if digits is not None else _decimals(shown, suffix, choice.symbol, spread)
    number = _fixed(shown, decimals)
    if spread and float(f"{spread:.{min(decimals, 15)}f}") > 0:
        number = f"{number}{THIN_SPACE}±{THIN_SPACE}{_fixed(spread, decimals)}"
    return number, choice.symbol


def other_unit(value: float, suffix: str, unit: str | None = None) -> str:
    """The quantity in the other usual unit; in the column's own if `unit` is another; "" where none is usual.

    >>> other_unit(1.5, "_a_dm2").replace(THIN_SPACE, " ")
    '13.9 A/ft²'
    """
    own, other = CHOICES[suffix][0].symbol, OTHER_UNIT.get(suffix)
    if unit and unit != own:
        return show(value, suffix)
    if not other or not math.isfinite(shown := from_canonical(value, unit_choice(suffix, other), suffix)):
        return ""
    if other == "in" and 0 < abs(shown) < THIN_IN:
        other, shown = "thou", shown * 1000
    return show(value, suffix, other, digits=max(0, ECHO_DIGITS - 1 - _magnitude(shown, ECHO_DIGITS)))


def plain(value: float) -> str:
    """The number as one would type it, with every digit it has.

    >>> plain(60.0), plain(0.402)
    ('60', '0.402')
    """
    return repr(float(value)).removesuffix(".0")


def _decimals(shown: float, suffix: str, symbol: str, spread: float | None) -> int:
    """The usual decimals of this suffix, fitted to the unit; fewer where the ± does not support them."""
    usual = _usual(shown, suffix, symbol)
    return min(usual, _supported(spread)) if spread else usual


def _usual(shown: float, suffix: str, symbol: str) -> int:
    digits = SHOW_DIGITS[suffix]
    if digits < 0:
        return max(0, -digits - 1 - _magnitude(shown, -digits))
    if suffix == "_pct" and abs(shown) < 1:
        return digits + 1  # a shrinkage or deviation under one per cent is nothing without its second decimal
    step = abs(spread_from_canonical(10.0**-digits, unit_choice(suffix, symbol), suffix))
    return max(0, round(-math.log10(step)))


def _supported(spread: float) -> int:
    """Decimals of a ± written with two significant digits, or with one if it was given so.

    >>> _supported(0.9712), _supported(0.023), _supported(0.2), _supported(12.0)
    (2, 3, 1, 0)
    """
    two = max(0, 1 - _magnitude(spread, 2))
    given = f"{spread:.12f}".rstrip("0").partition(".")[2]
    return min(two, len(given)) if two <= 12 else two


def _magnitude(shown: float, significant: int) -> int:
    """The power of ten of the number once it is rounded to that many digits."""
    return int(f"{shown:.{significant - 1}e}".partition("e")[2]) if shown else 0


def _fixed(number: float, decimals: int) -> str:
    """Plain decimals, without minus zero; a number too long to read gets an exponent."""
    text = f"{number:z.{min(decimals, 15)}f}" if abs(number) < 1e12 else f"{number:.6g}"
    return text.replace("-", MINUS)
