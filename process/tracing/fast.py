"""The fast reader: duckdb's CSV reader, told the shape exactly; it answers only where nothing is to be explained.

Measured against the others in tests/benchmarks/traces.py. Trap: its cast of “…+01:00” to a timestamp drops the offset,
so the offset is cut off before and reckoned here.
"""

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np

from process.tracing.engine import engine
from process.tracing.mapping import ELAPSED_UNITS, Mapping
from process.tracing.stamps import STAMP, offset_of
from process.tracing.table import MOST, Table, number_columns
from process.tracing.watching import fetched

# Two of these for each core that reads, instead of two of 32 MB: new memory costs more than the reading of it.
BUFFERS = "max_line_size=1048576, buffer_size=16777216"


def read_fast(
    path: Path, mapping: Mapping, first: str, expected_count: int, tell: Callable[[float], None] | None = None
) -> Table | None:
    """The whole table, or None where a line needs the careful reader; `first` is the first time as written."""
    time = _time_sql(mapping, first)
    if time is None:
        return None
    import duckdb  # heavy: only where a trace is read

    columns = number_columns(mapping)
    try:
        with engine(path.stat().st_size) as connection:
            found = fetched(connection, _select(mapping, time[0], columns), [str(path)], tell)
    except duckdb.Error:
        return None
    at = found["at"]
    if len(at) != expected_count or _has_nothing(at):
        return None
    if not all(_is_sound(found[f"n{column}"]) for column in columns):
        return None
    numbers = {column: _figures(found[f"n{column}"]) for column in columns}
    if _on_a_clock(mapping):
        return Table(_microseconds(at), time[1], None, numbers, mapping.skip + 1)
    return Table(None, None, np.asarray(at), numbers, mapping.skip + 1) if np.isfinite(at.sum()) else None


def _time_sql(mapping: Mapping, first: str) -> tuple[str, int | None] | None:
    """The time in SQL, nothing where it has not the shape of the first; with the offset that every line repeats."""
    columns = [f"c{column}" for column in mapping.time_columns]
    text = columns[0] if len(columns) == 1 else "(" + " || ' ' || ".join(columns) + ")"
    if mapping.time_kind == "epoch" or (mapping.time_kind == "elapsed" and mapping.elapsed_unit != "dhms"):
        return f"{text} * {ELAPSED_UNITS[mapping.elapsed_unit or 's']!r} as at", None
    match = STAMP.fullmatch(first.strip()) if mapping.time_kind != "elapsed" else None
    if match is None or (mapping.time_kind == "instant") != bool(match["zone"]):
        return None
    zone = first.strip()[match.start("zone") :] if match["zone"] else ""
    plain = text if zone in {"", "Z"} else f"left({text}, {len(first) - len(zone)})"
    # Every stamp as wide as the first and with its ending: so none hides another offset. Where there is no ending, each
    # begins with a figure (duckdb takes “epoch” for an instant too) and has its fraction where the first has it.
    begins, fits = f"ascii({text}) between 48 and 57", f"strlen({text}) = {len(first)}"
    fits += f" and suffix({text}, '{zone}')" if zone else f" and {begins}"
    if match["f"] and not zone:
        fits += f" and {text}[{match.start('f')}] = '{first.strip()[match.start('f') - 1]}'"
    if mapping.date_order == "ymd" and len(match["a"]) == 4 and not match["half"] and "," not in first:
        return f"case when {fits} then cast({plain} as timestamp) end as at", offset_of(match["zone"])
    layout = _layout(match, mapping)
    if not layout or zone:
        return None
    return f"case when {begins} then strptime({text}, '{layout}') end as at", None


def _layout(match: re.Match[str], mapping: Mapping) -> str:
    """The format of the first stamp; empty where it needs the careful reader."""
    signs = {"ymd": "%Y{0}%m{0}%d", "dmy": "%d{0}%m{0}%Y", "mdy": "%m{0}%d{0}%Y"}
    year = match["a"] if mapping.date_order == "ymd" else match["c"]
    between = match.string[match.end("c") : match.start("h")]
    tail = match.string[match.start("half") - 1 :] if match["half"] else " AM"
    if len(year) not in {2, 4} or not re.fullmatch(r" [AaPp][Mm]", tail):
        return ""
    day = signs[mapping.date_order].format(match["sep"])
    clock = ("%I" if match["half"] else "%H") + ":%M" + (":%S" if match["s"] else "")
    if match["f"]:
        clock += match.string[match.start("f") - 1] + "%f"
    return (day if len(year) == 4 else day.replace("%Y", "%y")) + between + clock + (" %p" if match["half"] else "")


def _select(mapping: Mapping, time: str, columns: list[int]) -> str:
    """Unused columns are declared, since each line must have them all, and never read."""
    kinds = ", ".join(f"'c{column}': '{_kind(mapping, column)}'" for column in range(mapping.column_count))
    wanted = "".join(f", c{column} as n{column}" for column in columns)
    mark = "\\t" if mapping.delimiter == "\t" else mapping.delimiter
    delimiter = f"E'{mark}'" if mark == "\\t" else f"'{mark}'"
    return (
        f"select {time}{wanted} from read_csv(?, auto_detect=false, header=false, delim={delimiter}, "
        f"skip={mapping.skip}, quote='\"', escape='\"', decimal_separator='{mapping.decimal}', columns={{{kinds}}}, "
        f"{BUFFERS})"
    )


def _kind(mapping: Mapping, column: int) -> str:
    """Of voltage and temperature only the span is kept: seven figures do, and half the memory."""
    if column == mapping.current_column or (column in mapping.time_columns and not _on_a_clock(mapping)):
        return "DOUBLE"
    return "FLOAT" if column in number_columns(mapping) else "VARCHAR"


def _on_a_clock(mapping: Mapping) -> bool:
    return mapping.time_kind in {"instant", "local"}


def _has_nothing(values: Any) -> bool:
    return isinstance(values, np.ma.MaskedArray) and bool(np.ma.getmaskarray(values).any())


def _microseconds(instants: Any) -> np.ndarray:
    """As the clock's own count: the array itself, seen as whole numbers."""
    return np.asarray(instants).astype("datetime64[us]", copy=False).view(np.int64)


def _figures(values: Any) -> np.ndarray:
    """An empty cell as NaN."""
    return values.filled(np.nan) if isinstance(values, np.ma.MaskedArray) else np.asarray(values)


def _is_sound(values: Any) -> bool:
    """No written “NaN”, no infinity and nothing beyond measure, as against an empty cell; by one sum of squares."""
    plain = values.filled(0.0) if isinstance(values, np.ma.MaskedArray) else values
    return bool(np.dot(plain, plain) <= MOST**2)
