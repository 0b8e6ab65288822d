"""When a piece hung on the rail: its order in time, and the day of the pull that it used."""

from collections.abc import Iterable
from datetime import date

from django.core.exceptions import ValidationError
from django.db.models import Exists, OuterRef
from django.utils import timezone

from process.models import Cathode, Event, Run

from .entry import refuse_before_made

RAIL_CHANGES = {Event.Kind.HUNG_IN, Event.Kind.TAKEN_OUT}


def refuse_disorder(line: Event) -> None:
    """It is hung in before it is taken out."""
    other = line.cathode.events.filter(kind__in=RAIL_CHANGES).exclude(kind=line.kind).first() if line.cathode else None
    if other is None:
        return
    came, went = (line, other) if line.kind == Event.Kind.HUNG_IN else (other, line)
    if came.at >= went.at:
        raise ValidationError(
            f"“{line.cathode.label}” was hung in at {_clock(came)} and taken out at {_clock(went)}: "
            "the first comes before the second, so correct one of the two times."
        )


def _clock(line: Event) -> str:
    return f"{timezone.localtime(line.at):%d %b, %H:%M}"


def first_on_the_rail(run: Run) -> list[Cathode]:
    """Those that went in with the run."""
    later = Event.objects.filter(cathode=OuterRef("pk"), kind=Event.Kind.HUNG_IN)
    return list(run.cathodes.filter(~Exists(later)).select_related("mould__item", "core__item", "pull"))


def move_pulls(cathodes: Iterable[Cathode], day: date) -> None:
    """A pull is of the day on which its cathode went into the bath."""
    moved = list(cathodes)
    refuse_before_made(moved, day)
    for pull in (cathode.pull for cathode in moved if cathode.pull):
        if pull.used_on != day:
            pull.used_on = day
            pull.save()
