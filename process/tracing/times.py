"""Which columns hold the time, how it is written, and in which order day and month stand."""

import re
from dataclasses import dataclass
from itertools import pairwise

from process.tracing.cells import column_kind, kind_of
from process.tracing.errors import TraceRefused
from process.tracing.headers import CURRENT, DATE, ELAPSED, TEMPERATURE, TIME, VOLTAGE, Header

DATED = re.compile(r"\s*(\d{1,4})([-/.])(\d{1,2})[-/.](\d{1,4})")
EPOCH_FROM, EPOCH_TO = 5e8, 5e9  # 1985 to 2128 in seconds
FIGURES = {CURRENT, VOLTAGE, TEMPERATURE}


@dataclass(frozen=True)
class Time:
    """`date_order` or `elapsed_unit` is empty where a person must say it."""

    kind: str
    columns: tuple[int, ...]
    date_order: str = ""
    elapsed_unit: str = ""
    says_utc: bool = False


def time_of(rows: list[tuple[str, ...]], headers: list[Header], in_order_count: int) -> Time:
    """The first reading of the columns that makes a time; only the first rows stand as they follow in the file."""
    columns = [[row[i] for row in rows] for i in range(len(headers))]
    kinds = [column_kind(cells) for cells in columns]
    for kind in ("instant", "local"):
        if kind in kinds:
            at = kinds.index(kind)
            return Time(kind, (at,), date_order(columns[at]), says_utc=_says_utc(headers[at]))
    if "date" in kinds:
        return _two_columns(columns, kinds, headers)
    if "duration" in kinds:
        return Time("elapsed", (kinds.index("duration"),), elapsed_unit="dhms")
    return _in_figures(columns, kinds, headers, in_order_count)


def _two_columns(columns: list[list[str]], kinds: list[str], headers: list[Header]) -> Time:
    """A date in one column and the time of day in another."""
    day = kinds.index("date")
    clock = next((i for i, kind in enumerate(kinds) if kind in {"time", "duration"}), None)
    if clock is None:
        raise TraceRefused("a column of dates is found and none of times: export the file with both.")
    says_utc = _says_utc(headers[day]) or _says_utc(headers[clock])
    return Time("local", (day, clock), date_order(columns[day]), says_utc=says_utc)


def _in_figures(columns: list[list[str]], kinds: list[str], headers: list[Header], in_order_count: int) -> Time:
    """Time as a plain number: by its header, or the first column that only grows."""
    numbers = [i for i, kind in enumerate(kinds) if kind == "number" and headers[i].meaning not in FIGURES]
    named = [i for i in numbers if headers[i].meaning in {ELAPSED, TIME, DATE}]
    grows = [i for i in numbers if _grows(columns[i][:in_order_count])]
    at = next(iter([*(i for i in named if i in grows), *named, *grows]), None)
    if at is None:
        raise TraceRefused("no column of times is found: a charge needs the instant of each sample.")
    first = next(value for cell in columns[at] if (value := _value(cell)) is not None)
    if EPOCH_FROM < first < EPOCH_TO:
        return Time("epoch", (at,), elapsed_unit="s")
    if EPOCH_FROM < first / 1000 < EPOCH_TO:
        return Time("epoch", (at,), elapsed_unit="ms")
    return Time("elapsed", (at,), elapsed_unit=headers[at].unit if headers[at].meaning == ELAPSED else "")


def date_order(cells: list[str]) -> str:
    """From dates that can only be read one way; points part days first; empty where both ways are possible."""
    found = [match.groups() for cell in cells if (match := DATED.match(cell))]
    if not found:
        return ""
    if all(len(first) == 4 for first, *_ in found):
        return "ymd"
    if any(int(first) > 12 for first, *_ in found):
        return "dmy"
    if any(int(second) > 12 for _, _, second, _ in found):
        return "mdy"
    return "dmy" if found[0][1] == "." else ""


def _says_utc(header: Header) -> bool:
    return bool(re.search(r"(?:^|[^a-z])(?:utc|gmt|zulu)(?:$|[^a-z])", header.text.casefold().replace("_", " ")))


def _grows(cells: list[str]) -> bool:
    values = [value for cell in cells if (value := _value(cell)) is not None]
    return len(values) > 1 and all(a <= b for a, b in pairwise(values)) and values[0] < values[-1]


def _value(cell: str) -> float | None:
    return float(cell.strip().replace(",", ".")) if kind_of(cell) == "number" else None
