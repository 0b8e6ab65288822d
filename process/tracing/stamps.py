"""One written date, time or duration as a number; the careful way, which says what is wrong with it."""

import re
from datetime import datetime

EPOCH = datetime(1970, 1, 1)  # of whichever clock the stamp was written by
STAMP = re.compile(
    r"(?P<a>\d{1,4})(?P<sep>[-/.])(?P<b>\d{1,2})(?P=sep)(?P<c>\d{1,4})(?:[T ,]\s?|,\s)"
    r"(?P<h>\d{1,2}):(?P<mi>\d{2})(?::(?P<s>\d{2})(?:[.,](?P<f>\d{1,9}))?)?(?:\s?(?P<half>[AaPp])\.?[Mm]\.?)?"
    r"(?:\s?(?P<zone>[Zz]|UTC|GMT|[+-]\d{2}(?::?\d{2})?))?"
)
DURATION = re.compile(
    r"(?:(?P<d>\d{1,5})\s*(?:d|days?|[.:\s])[\s,]*)?(?P<h>\d{1,5}):(?P<mi>[0-5]\d):(?P<s>[0-5]\d)(?:[.,](?P<f>\d{1,9}))?"
)
READ_AS = {"ymd": "year, month, day", "dmy": "day, month, year", "mdy": "month, day, year"}
ORDERS = {"ymd": ("a", "b", "c"), "dmy": ("c", "b", "a"), "mdy": ("c", "a", "b")}


class Unreadable(ValueError):
    """Completed by the reader with the line where it stands."""


def stamp(text: str, order: str) -> tuple[int, int | None]:
    """Microseconds since 1970 by the clock that wrote it, and its offset from UTC in seconds, if it has one."""
    match = STAMP.fullmatch(text.strip())
    if not match:
        raise Unreadable(f"“{text[:40]}” is no date with a time")
    year, month, day = (int(match[part]) for part in ORDERS[order])
    hour = int(match["h"])
    if match["half"]:
        if not 1 <= hour <= 12:
            raise Unreadable(f"“{text[:40]}” has an hour that no 12-hour clock shows")
        hour = hour % 12 + (12 if match["half"] in "Pp" else 0)
    minute, second, micro = int(match["mi"]), int(match["s"] or 0), _micro(match["f"])
    ends_day = (hour, minute, second, micro) == (24, 0, 0, 0)  # ISO 8601 writes the end of a day so, too
    try:
        at = datetime(year + 2000 if year < 100 else year, month, day, 0 if ends_day else hour, minute, second)
    except ValueError as error:
        raise Unreadable(f"“{text[:40]}” is no day or time that exists, read as {READ_AS[order]}") from error
    seconds = (at - EPOCH).days * 86_400 + (at - EPOCH).seconds + (86_400 if ends_day else 0)
    return seconds * 1_000_000 + micro, offset_of(match["zone"])


def offset_of(zone: str | None) -> int | None:
    """“Z”, “+01:00”, “-0330” and “+01” in seconds."""
    if not zone:
        return None
    if zone in {"Z", "z", "UTC", "GMT"}:
        return 0
    digits = zone[1:].replace(":", "").ljust(4, "0")
    return (-1 if zone[0] == "-" else 1) * (int(digits[:2]) * 3600 + int(digits[2:]) * 60)


def duration(text: str) -> float:
    """Seconds of “26:20:00”, “1 02:20:00” or “1d 02:20:00”."""
    match = DURATION.fullmatch(text.strip())
    if not match:
        raise Unreadable(f"“{text[:40]}” is no time since a start")
    whole = int(match["d"] or 0) * 86_400 + int(match["h"]) * 3600 + int(match["mi"]) * 60 + int(match["s"])
    return whole + _micro(match["f"]) / 1e6


def _micro(fraction: str | None) -> int:
    return int((fraction or "0")[:6].ljust(6, "0"))
