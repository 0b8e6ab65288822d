"""A number beyond every bench comes back with a sentence; the bounds stand in `records.units.reach`."""

import re
from typing import Any

from django import forms
from django.core.exceptions import ValidationError

from records import units
from records.units import Parsed, Reach

LOOK = "Look at the number and its unit again."
BELOW = {
    "_a": "A current is not negative here: write its size; a reversal is an event with a note.",
    "_ah": "A charge is not less than nothing here: read the meter again.",
}
WIDEST_MARGIN = 10  # times the number: what is surer than that a person may still have measured
_WHOLE = re.compile(r"[+-]?[0-9]{1,12}")


def refuse_beyond(parsed: Parsed, reach: Reach, suffix: str) -> None:
    """Number and ± against the outermost bounds."""
    if parsed.canonical < 0 and reach.is_size:
        raise ValidationError(BELOW.get(suffix, "Less than nothing cannot be here: look at the sign."), code="beyond")
    if not reach.low <= parsed.canonical <= reach.high:
        raise ValidationError(f"{between(reach, suffix)} is possible here. {LOOK}", code="beyond")
    spread = parsed.plus_minus
    if spread is None:
        return
    widest = reach.high - reach.low
    if reach.is_size and parsed.canonical:
        widest = min(widest, WIDEST_MARGIN * parsed.canonical)
    if not 0 <= spread <= widest:
        raise ValidationError(
            "The ± is far larger than the number: look at its decimal point, or leave it empty if it is not known.",
            code="beyond",
        )


def between(reach: Reach, suffix: str) -> str:
    """“From 0 to 40 °C”."""
    return f"F{_from_to(reach)[1:]} {units.CHOICES[suffix][0].symbol}"


class CountField(forms.IntegerField):
    """A whole number between two bounds."""

    def __init__(
        self, reach: Reach = units.COUNT, *, error_messages: dict[str, str] | None = None, **kwargs: Any
    ) -> None:
        self.reach = reach
        super().__init__(
            error_messages=_words("whole number", reach) | (error_messages or {}), **_ends(reach), **kwargs
        )

    def to_python(self, value: Any) -> int | None:
        if value in self.empty_values or not str(value).strip():
            return None
        if not _WHOLE.fullmatch(str(value).strip()):
            raise ValidationError(self.error_messages["invalid"], code="invalid")
        return int(value)


class FactorField(forms.FloatField):
    """A number without a unit between two bounds, read as a person writes it: a comma is understood."""

    widget = forms.TextInput({"inputmode": "decimal", "autocomplete": "off"})

    def __init__(
        self, reach: Reach = units.BARE, *, error_messages: dict[str, str] | None = None, **kwargs: Any
    ) -> None:
        self.reach = reach
        super().__init__(error_messages=_words("number", reach) | (error_messages or {}), **_ends(reach), **kwargs)

    def to_python(self, value: Any) -> float | None:
        if value in self.empty_values or not str(value).strip():
            return None
        try:
            return units.parse(str(value), "_ratio").canonical
        except units.UnitsError as error:
            raise ValidationError(str(error), code="unreadable") from error


def _words(noun: str, reach: Reach) -> dict[str, str]:
    return dict.fromkeys(("invalid", "min_value", "max_value"), f"Write a {noun} {_from_to(reach)}.")


def _ends(reach: Reach) -> dict[str, float]:
    return {"min_value": reach.low, "max_value": reach.high}


def _from_to(reach: Reach) -> str:
    low, high = (_grouped(bound) for bound in reach)
    return f"from {low} to {high}"


def _grouped(bound: float) -> str:
    """“10 000” rather than “10000”."""
    return f"{bound:,.10g}".replace(",", "\u202f").replace("-", "\u2212")
