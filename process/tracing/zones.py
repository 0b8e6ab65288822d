"""From the time on a clock to UTC: the hour that comes twice and the hour that never comes are told apart or asked."""

import re
from datetime import UTC, datetime, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

import numpy as np
from numpy.typing import NDArray

from process.tracing.errors import AskFirst, TraceRefused

MICRO = 1_000_000
FIXED = re.compile(r"(?:UTC)?([+-]\d{2}):?(\d{2})")
MOST_DAYS = 40_000
Instants = NDArray[np.int64]


def to_utc(local_us: Instants, zone: str, doubled_hour: str) -> Instants:
    """Instants of local times in the order in which the logger wrote them."""
    fixed = fixed_offset(zone)
    if fixed is not None:
        return local_us - fixed * MICRO
    try:
        where = ZoneInfo(zone)
    except (ZoneInfoNotFoundError, ValueError, OSError) as error:
        raise AskFirst("zone", f"“{zone}” is no time zone that is known here: choose one of the list.") from error
    return _by_zone(local_us, where, zone, doubled_hour)


def fixed_offset(zone: str) -> int | None:
    """Seconds of “UTC” and “UTC+01:00”; None for a zone with rules."""
    if zone in {"UTC", "Etc/UTC", "Z"}:
        return 0
    match = FIXED.fullmatch(zone)
    if not match:
        return None
    hours, minutes = int(match[1]), int(match[2])
    return hours * 3600 + (minutes * 60 if hours >= 0 and not match[1].startswith("-") else -minutes * 60)


def _by_zone(local_us: Instants, where: ZoneInfo, zone: str, doubled_hour: str) -> Instants:
    low, high = int(local_us.min()) // MICRO, int(local_us.max()) // MICRO
    if high - low > MOST_DAYS * 86_400:
        raise TraceRefused(
            "the times lie more than a century apart: the logger’s clock was not set, or a date is wrong."
        )
    changes = _changes(where, low - 2 * 86_400, high + 2 * 86_400)
    offset = np.full(local_us.shape, _offset(where, low - 2 * 86_400), dtype=np.int64)
    for at, before, after in changes:
        first, last = (at + min(before, after)) * MICRO, (at + max(before, after)) * MICRO
        offset[local_us >= last] = after
        within = np.flatnonzero((local_us >= first) & (local_us < last))
        if within.size == 0:
            continue
        if after > before:
            raise AskFirst("zone", _never(within, first, zone, before))
        later = _second_pass(local_us, within, doubled_hour)
        offset[within[later]] = after
    return local_us - offset * MICRO


def _second_pass(local_us: Instants, within: NDArray[np.intp], doubled_hour: str) -> NDArray[np.bool_]:
    """Which samples of the doubled hour were written the second time it was that hour."""
    if doubled_hour in {"first", "second"}:
        return np.full(within.shape, doubled_hour == "second")
    back = [here for before, here in pairwise(within) if local_us[here] < local_us[before]]
    if len(back) != 1:
        raise AskFirst(
            "doubled_hour",
            "The clocks went back within this trace and the lines do not show where: say whether the times of the "
            "doubled hour were written before the change or after it, or choose a fixed offset if the logger’s clock "
            "was not changed.",
        )
    return within >= back[0]


def _never(within: NDArray[np.intp], first: int, zone: str, before: int) -> str:
    hour = datetime.fromtimestamp(first / MICRO, UTC)
    return (
        f"{within.size} time{'s' if within.size > 1 else ''} from {hour:%H:%M} on {hour:%-d %B %Y} did not exist in "
        f"{zone}: the clocks went forward then. The logger’s clock was not changed: choose the fixed offset "
        f"UTC{before // 3600:+03d}:{abs(before) % 3600 // 60:02d}."
    )


def _offset(where: ZoneInfo, at: int) -> int:
    shift = datetime.fromtimestamp(at, UTC).astimezone(where).utcoffset()
    return int((shift or timedelta()).total_seconds())


def _changes(where: ZoneInfo, low: int, high: int) -> list[tuple[int, int, int]]:
    """(instant, offset before, offset after) of each change between two instants."""
    days = list(range(low, high + 86_400, 86_400))
    offsets = [_offset(where, at) for at in days]
    found = []
    for (from_s, before), (to_s, after) in pairwise(zip(days, offsets, strict=True)):
        if before != after:
            found.append((_instant_of(where, from_s, to_s, before), before, after))
    return found


def _instant_of(where: ZoneInfo, low: int, high: int, before: int) -> int:
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if _offset(where, middle) == before else (low, middle)
    return high
