"""A bath's limits as its page shows them."""

from dataclasses import dataclass

from process.models import Bath, BathLimit, Constituent


@dataclass(frozen=True)
class LimitLine:
    """The bounds of one constituent in the unit in which people speak of it."""

    code: str
    label: str
    suffix: str
    target: float | None = None
    warn: tuple[float | None, float | None] = (None, None)
    stop: tuple[float | None, float | None] = (None, None)
    is_set: bool = False


# Columns are g/L; chloride is spoken of in mg/L.
SPOKEN_OF = {Constituent.CHLORIDE: ("_mg_l", 1000.0)}


def limit_lines(bath: Bath) -> list[LimitLine]:
    rows = {limit.constituent: limit for limit in bath.limits.all()}
    return [_limit_line(code, rows.get(code)) for code in Constituent.values]


def _limit_line(code: str, limit: BathLimit | None) -> LimitLine:
    suffix, times = SPOKEN_OF.get(code, ("_g_l", 1.0))
    label = Constituent(code).label
    if limit is None:
        return LimitLine(code, label, suffix)
    names = ("target_g_l", "warn_low_g_l", "warn_high_g_l", "stop_low_g_l", "stop_high_g_l")
    values = [None if (value := getattr(limit, name)) is None else value * times for name in names]
    return LimitLine(code, label, suffix, values[0], (values[1], values[2]), (values[3], values[4]), True)
