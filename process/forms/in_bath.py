"""What was done in a bath was done since it stood there, and in an amount that it can hold."""

from datetime import date, datetime
from typing import TypeVar

from django.core.exceptions import ValidationError
from django.utils import timezone

from process.models import Bath
from process.ranges import judge
from records.clock import day_words
from records.units import show

When = TypeVar("When", date | None, datetime | None)


def since_made_up(bath: Bath, at: When) -> When:
    """The day or instant as typed, refused before the bath was made up."""
    day = timezone.localdate(at) if isinstance(at, datetime) else at
    if day and bath.made_up_on and day < bath.made_up_on:
        made = day_words(bath.made_up_on)
        raise ValidationError(f"{bath.number} was made up on {made}: write a later day, or correct that day first.")
    return at


def too_much(bath: Bath, kind: str, mass_g: float) -> str:
    """Why a mass cannot have gone in at once, since more than the table holds possible would be dissolved; or ""."""
    added = mass_g / bath.volume_l
    if judge(f"{kind}_g_l", added).verdict != "impossible":
        return ""
    return (
        f"{show(mass_g, '_g')} in {show(bath.volume_l, '_l')} would be {show(added, '_g_l')} more: look at the number "
        "and its unit again."
    )
