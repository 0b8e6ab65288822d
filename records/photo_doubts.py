"""What makes a photograph doubtful as evidence, one sentence each."""

from collections.abc import Iterator
from datetime import datetime

from django.utils import timezone

from records import clock
from records.imaging import Seen
from records.models import Photo
from records.wording.phrases import day as day_words

APART_S = 1


def doubts(photo: Photo, seen: Seen | None) -> Iterator[str]:
    """Of a row with `moulded_on`, and of what its camera wrote."""
    if seen is None:
        yield "The original is not in the data folder or cannot be read: restore it from the backup."
    if photo.taken_at is None:
        yield "Nobody knows when it was taken: it proves how the piece looks, not when."
        return
    yield from _wrong_moment(photo)
    if late := added_late(photo):
        yield f"{late}."
    if clock.is_future(photo.taken_at):
        yield "It is said to be taken in the future: the camera’s clock was wrong."
    if not photo.taken_reason and is_corrected(photo, seen):
        yield "The time differs from what the camera wrote, and no reason is given."


def _wrong_moment(photo: Photo) -> Iterator[str]:
    moulded_on = getattr(photo, "moulded_on", None)
    if moulded_on is None or photo.taken_at is None:
        return
    taken_on = timezone.localtime(photo.taken_at).date()
    days = f"It was taken on {day_words(taken_on)}, and the piece was moulded on {day_words(moulded_on)}"
    if photo.moment == Photo.Moment.BEFORE and taken_on > moulded_on:
        yield f"It is said to be from before. {days}: it cannot show how the piece looked before."


def added_late(photo: Photo) -> str:
    """Of a picture said to be from before that came in after the moulding: when, and why its time is as it is."""
    moulded_on, kept_at = getattr(photo, "moulded_on", None), getattr(photo, "kept_at", None)
    if photo.moment != Photo.Moment.BEFORE or moulded_on is None or kept_at is None:
        return ""
    kept_on = timezone.localtime(kept_at).date()
    if kept_on <= moulded_on:
        return ""
    reason = f": {photo.taken_reason.rstrip('.')}" if photo.taken_reason else ", no reason given"
    return f"Added on {day_words(kept_on)}, after the moulding on {day_words(moulded_on)}{reason}"


def camera_time(seen: Seen | None) -> datetime | None:
    """The instant that the camera wrote; without an offset it is the museum's own time."""
    if seen is None or seen.taken_at is None:
        return None
    return timezone.make_aware(seen.taken_at) if timezone.is_naive(seen.taken_at) else seen.taken_at


def is_corrected(photo: Photo, seen: Seen | None) -> bool:
    """Whether the record gives another time than the camera did."""
    written = camera_time(seen)
    if written is None or photo.taken_at is None:
        return False
    return abs((photo.taken_at - written).total_seconds()) > APART_S
