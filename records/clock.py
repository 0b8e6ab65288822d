"""The only source of the present instant, so that tests and the demo can hold it still."""

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from datetime import date, datetime, timedelta

from django.utils import timezone

# A phone's clock runs a little ahead of the server's.
FUTURE_TOLERANCE = timedelta(minutes=5)

_held: ContextVar[datetime | None] = ContextVar("held_instant", default=None)


def now() -> datetime:
    """The present instant, aware, in UTC; or the one that `held_at` holds."""
    return _held.get() or timezone.now()


def today() -> date:
    """The present date by the museum's own clock."""
    return timezone.localdate(now())


def day_words(day: date | datetime) -> str:
    """“5 March 2026”, by the museum's own clock, as it stands in sentences."""
    local = timezone.localtime(day) if isinstance(day, datetime) else day
    return f"{local.day} {local:%B %Y}"


def countdown(day: date) -> str:
    """“30 Apr 2026, in 12 days”; “… 3 days late”."""
    days = (day - today()).days
    left = {0: "today", 1: "tomorrow", -1: "1 day late"}.get(days) or (
        f"in {days} days" if days > 0 else f"{-days} days late"
    )
    return f"{day.day} {day:%b %Y}, {left}"


def is_future(instant: datetime) -> bool:
    """True if the instant lies further ahead than a wrong phone clock explains."""
    return instant > now() + FUTURE_TOLERANCE


@contextmanager
def held_at(instant: datetime) -> Iterator[None]:
    """Hold the clock still inside a `with` block (the demo and tests record the past)."""
    token = _held.set(instant)
    try:
        yield
    finally:
        _held.reset(token)
