"""What hangs on a rail at an instant, by the events that hung a piece in or took it out."""

from collections.abc import Iterable
from datetime import date, datetime
from typing import TypeVar

from django.core.exceptions import ValidationError
from django.utils import timezone

from process.models import Cathode, Event
from records import clock

When = TypeVar("When", date | None, datetime | None)


def stay_of(cathode: Cathode, events: Iterable[Event]) -> tuple[datetime | None, datetime | None]:
    """When it was hung in and when it was taken out; None where no event says so: from the entry, to the stop."""
    own = {event.kind: event.at for event in events if event.cathode_id == cathode.pk}
    return own.get(Event.Kind.HUNG_IN), own.get(Event.Kind.TAKEN_OUT)


def left_at(cathode: Cathode) -> datetime | None:
    """When it came out: by itself, or with the others at the stop."""
    events = list(cathode.run.events.all())
    stop = next((event.at for event in events if event.kind == Event.Kind.STOP), None)
    return stay_of(cathode, events)[1] or stop


def refuse_before_it_came_out(cathode: Cathode, when: When) -> When:
    """What still hung in the bath was neither weighed nor measured nor tested; by the minute where one is written."""
    left = left_at(cathode) if when else None
    to_the_minute = isinstance(when, datetime)
    if left and when < (left if to_the_minute else timezone.localdate(left)):
        instant = f"{clock.day_words(left)}, {timezone.localtime(left):%H:%M}"
        wanted = "a later time" if to_the_minute else "that day or a later one"
        raise ValidationError(f"It came out of the bath on {instant}: write {wanted}.")
    return when


def hanging_at(cathodes: Iterable[Cathode], events: Iterable[Event], at: datetime) -> list[Cathode]:
    """Those that hang there from this instant on: what is taken out at it is gone, what is hung in at it is there."""
    rows = list(events)
    stays = [(cathode, *stay_of(cathode, rows)) for cathode in cathodes]
    return [cathode for cathode, begin, end in stays if (begin is None or begin <= at) and (end is None or at < end)]


def area_hours(cathodes: Iterable[Cathode], events: Iterable[Event], begin: datetime, end: datetime) -> float:
    """Area times hours (dm²·h) of all that hung between two instants, each piece for as long as it hung."""
    rows, total = list(events), 0.0
    for cathode in cathodes:
        hung, taken = stay_of(cathode, rows)
        span = min(taken or end, end) - max(hung or begin, begin)
        total += cathode.total_area_dm2 * max(span.total_seconds() / 3600, 0.0)
    return total
