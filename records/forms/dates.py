"""Instants in the museum's time, and dates of which one is not sure."""

import re
from datetime import UTC, date, datetime, timedelta, tzinfo
from typing import Any

from django import forms
from django.core.exceptions import ValidationError
from django.utils import timezone

from records import clock, dating

EARLIEST_YEAR, LATEST_YEAR = 1800, 2200
YEAR = f"Check the year: it must lie between {EARLIEST_YEAR} and {LATEST_YEAR}."
_INSTANT = re.compile(
    r"(?P<day>[0-9]{4}-[0-9]{2}-[0-9]{2})[T ] ?(?P<time>[0-9]{2}:[0-9]{2}(?::[0-9]{2})?)(?:\.[0-9]{1,6})?"
    r" ?(?P<offset>Z|[+-][0-9]{2}:?[0-9]{2})?"
)


def read_instant(text: str, zone: tzinfo) -> datetime:
    """The aware instant in UTC of a local time, or of a time with its offset."""
    match = _INSTANT.fullmatch(text.strip().replace("\u2212", "-"))
    if not match:
        raise ValidationError("Write day and time as 2026-02-16 09:00.", code="unreadable")
    try:
        local = datetime.fromisoformat(f"{match['day']}T{match['time']}{match['offset'] or ''}")
    except ValueError as error:
        raise ValidationError("There is no such day or time: check day, month and hour.", code="unreadable") from error
    if not EARLIEST_YEAR <= local.year <= LATEST_YEAR:
        raise ValidationError(YEAR, code="year")
    if local.tzinfo is None:
        _ask_at_clock_change(local, zone)
        local = local.replace(tzinfo=zone)
    return local.astimezone(UTC)


def _ask_at_clock_change(local: datetime, zone: tzinfo) -> None:
    """Refuse a local time that came twice or never; the offset settles it."""
    first, second = (local.replace(tzinfo=zone, fold=fold) for fold in (0, 1))
    if first.utcoffset() == second.utcoffset():
        return
    written = f"{local:%Y-%m-%d %H:%M}"
    came_back = first.astimezone(UTC).astimezone(zone).replace(tzinfo=None) == local
    if came_back:
        raise ValidationError(
            f"{local:%H:%M} came twice on that day, since the clocks went back: write {written} "
            f"{_offset(first)} for the first or {written} {_offset(second)} for the second.",
            code="twice",
        )
    raise ValidationError(
        f"{local:%H:%M} did not exist on that day, since the clocks went forward: look at the clock again, "
        f"or write the offset as in {written} {_offset(first)}.",
        code="never",
    )


def _offset(moment: datetime) -> str:
    written = moment.strftime("%z")
    return f"{written[:3]}:{written[3:5]}"


class InstantInput(forms.DateTimeInput):
    """The browser's own picker; a plain box once an offset has to be written."""

    input_type = "datetime-local"

    def get_context(self, name: str, value: Any, attrs: dict[str, Any] | None) -> dict[str, Any]:
        context = super().get_context(name, value, attrs)
        if value and not _fits_the_picker(str(value)):
            context["widget"]["type"] = "text"
        return context

    def format_value(self, value: Any) -> str:
        return value if isinstance(value, str) else ("" if value is None else str(value))


def _fits_the_picker(text: str) -> bool:
    try:
        local = datetime.fromisoformat(text)
        if local.tzinfo is None:
            _ask_at_clock_change(local, timezone.get_current_timezone())
    except (ValueError, ValidationError):
        return False
    return local.tzinfo is None and re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9:]{5,8}", text) is not None


class InstantField(forms.Field):
    """Local museum time in, aware UTC out; the future is refused beyond what a phone's clock explains."""

    widget = InstantInput
    default_error_messages = {"required": "Write day and time; they are needed here."}

    def __init__(self, *, allow_future: bool = False, **kwargs: Any) -> None:
        self.allow_future = allow_future
        super().__init__(**kwargs)

    def prepare_value(self, value: Any) -> Any:
        """Seconds are shown where there are any, the offset where the local time came twice."""
        if not isinstance(value, datetime):
            return value
        local = timezone.localtime(value) if value.tzinfo else value
        shown = f"{local:%Y-%m-%dT%H:%M:%S}" if local.second else f"{local:%Y-%m-%dT%H:%M}"
        if _fits_the_picker(shown):
            return shown
        return f"{shown.replace('T', ' ')} {_offset(local)}" if value.tzinfo else shown

    def to_python(self, value: Any) -> datetime | None:
        if value in self.empty_values:
            return None
        if isinstance(value, datetime):
            return value.astimezone(UTC) if value.tzinfo else timezone.make_aware(value).astimezone(UTC)
        instant = read_instant(str(value), timezone.get_current_timezone())
        if not self.allow_future and clock.is_future(instant):
            ahead = instant - clock.now()
            hint = " Is it the time zone?" if ahead < timedelta(hours=14) else " Is it the year?"
            raise ValidationError(f"This time has not come yet: write when it happened.{hint}", code="future")
        return instant

    def has_changed(self, initial: Any, data: Any) -> bool:
        return (self.prepare_value(initial) or "") != (data or "")


class DayField(forms.DateField):
    """A day of the calendar; one on which something happened lies not ahead."""

    widget = forms.DateInput({"type": "date"}, format="%Y-%m-%d")

    def __init__(self, *, allow_future: bool = False, **kwargs: Any) -> None:
        self.allow_future = allow_future
        super().__init__(**kwargs)

    def validate(self, value: date | None) -> None:
        super().validate(value)
        if value is None:
            return
        if not self.allow_future and value > clock.today():
            raise ValidationError("This day has not come yet: write when it happened. Is it the year?", code="future")
        if not EARLIEST_YEAR <= value.year <= LATEST_YEAR:
            raise ValidationError(YEAR, code="year")


class EdtfField(forms.CharField):
    """A date in words or EDTF; cleans to `dating.Dating`, or None where nothing was typed."""

    def __init__(self, **kwargs: Any) -> None:
        kwargs.pop("max_length", None)
        super().__init__(**kwargs)

    def clean(self, value: Any) -> dating.Dating | None:
        text = super().clean(value)
        if not text:
            return None
        try:
            return dating.read(text)
        except dating.DateError as error:
            raise ValidationError(str(error), code="unreadable") from error
