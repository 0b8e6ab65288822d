"""Round numbers for value axes, round clock times for the time axis."""

import math
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta, tzinfo

from records.pdf.charts.model import Panel

_MINUTES = (5, 10, 15, 30, 60, 120, 180, 360, 720, 1440, 2880, 7 * 1440, 14 * 1440, 28 * 1440,
            56 * 1440, 112 * 1440, 364 * 1440, 1820 * 1440)  # fmt: skip


@dataclass(frozen=True)
class ValueScale:
    """A span of values with its ticks, and how many decimals the ticks need."""

    low: float
    high: float
    ticks: tuple[float, ...]
    decimals: int

    def label(self, value: float) -> str:
        return f"{value:.{self.decimals}f}".replace("-", "−")


@dataclass(frozen=True)
class TimeTick:
    """An instant with its local clock time, and the day where a new one begins."""

    at: datetime
    clock: str
    day: str


def nice_step(span: float, count: int) -> float:
    """The smallest of 1, 2, 2.5, 5 × 10ⁿ that cuts a span into at most `count` parts."""
    raw = span / count
    power = 10.0 ** math.floor(math.log10(raw))
    return next(m * power for m in (1, 2, 2.5, 5, 10) if m * power >= raw * (1 - 1e-9))


def value_scale(panel: Panel, count: int = 5) -> ValueScale:
    """The axis of a panel: from zero where the values are near it, with round ends."""
    values = [v for s in panel.series for _, v in s.points if v is not None and math.isfinite(v)]
    values += [t.value for t in panel.targets]
    low, high = min(values, default=0.0), max(values, default=1.0)
    low = 0.0 if 0 <= low < 0.7 * high else low
    low = panel.axis.low if panel.axis.low is not None else low
    high = panel.axis.high if panel.axis.high is not None else high
    if high <= low:
        high = low + (abs(low) or 1.0)
    step = nice_step(high - low, count)
    first, last = math.floor(low / step + 1e-9), math.ceil(high / step - 1e-9)
    if panel.axis.high is None and high > (last - 0.05) * step:
        last += 1  # room above the highest line for its name
    decimals = max(0, -math.floor(math.log10(step) + 1e-9))
    if round(step * 10**decimals) != round(step * 10**decimals, 6):
        decimals += 1
    ticks = tuple(n * step for n in range(first, last + 1))
    return ValueScale(first * step, last * step, ticks, decimals)


def _minutes_of_day(local: datetime) -> int:
    return local.hour * 60 + local.minute


def _is_tick(local: datetime, step: int) -> bool:
    if step <= 1440:
        return _minutes_of_day(local) % step == 0
    return _minutes_of_day(local) == 0 and local.toordinal() % (step // 1440) == 0


def time_ticks(start: datetime, end: datetime, tz: tzinfo, most: int = 9) -> tuple[TimeTick, ...]:
    """Instants at which the local clock shows a round time; a clock change leaves them round."""
    minutes = (end - start).total_seconds() / 60
    step = next((m for m in _MINUTES if minutes / m <= most), _MINUTES[-1])
    if step > 7 * 1440:
        return _day_ticks(start, end, tz, step // 1440)
    stride = timedelta(minutes=min(step, 15))
    at = start.astimezone(UTC).replace(minute=0, second=0, microsecond=0)
    ticks: list[TimeTick] = []
    shown = None
    while at <= end:
        local = at.astimezone(tz)
        if at >= start and _is_tick(local, step):
            day = f"{local.day} {local:%b}" if local.date() != shown else ""
            shown = local.date()
            ticks.append(TimeTick(at, f"{local:%H:%M}", day))
        at += stride
    return tuple(ticks)


def _day_ticks(start: datetime, end: datetime, tz: tzinfo, days: int) -> tuple[TimeTick, ...]:
    """Local midnights: over weeks and years nobody asks for the hour, but for the day and its year."""
    first, last = start.astimezone(tz).date(), end.astimezone(tz).date()
    ticks: list[TimeTick] = []
    for ordinal in range(-(-first.toordinal() // days) * days, last.toordinal() + 1, days):
        day = date.fromordinal(ordinal)
        at = datetime.combine(day, time(), tzinfo=tz)
        if start <= at <= end:
            new = not ticks or ticks[-1].at.astimezone(tz).year != day.year
            ticks.append(TimeTick(at, f"{day.day} {day:%b}", str(day.year) if new else ""))
    return tuple(ticks)


def clock_name(start: datetime, end: datetime, tz: tzinfo) -> str:
    """What the time axis counts in, e.g. 'local time, UTC+1'; both offsets where the clock was changed."""
    offsets = list(dict.fromkeys(_offset(at.astimezone(tz)) for at in (start, end)))
    return "local time, " + " then ".join(offsets)


def _offset(local: datetime) -> str:
    minutes = round((local.utcoffset() or timedelta()).total_seconds() / 60)
    sign = "+" if minutes >= 0 else "−"
    hours, rest = divmod(abs(minutes), 60)
    return f"UTC{sign}{hours}" + (f":{rest:02d}" if rest else "") if minutes else "UTC"
