"""The careful reader: the standard library line by line, five times slower, and each fault named with its line."""

import csv
import sys
from array import array
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TextIO

import numpy as np

from process.tracing.cells import KINDS
from process.tracing.errors import TraceRefused
from process.tracing.mapping import ELAPSED_UNITS, Mapping
from process.tracing.stamps import Unreadable, duration, stamp
from process.tracing.table import MOST, Table, number_columns

TELL_LINES = 20_000


def read_carefully(
    path: Path, mapping: Mapping, ends_with_newline: bool, tell: Callable[[int], None] | None = None
) -> Table:
    """Every line in its turn; raises TraceRefused at the first that cannot be read; `tell` hears how far it is."""
    columns = number_columns(mapping)
    numbers = {column: array("d") for column in columns}
    lines, whole, seconds, offsets = array("q"), array("q"), array("d"), array("q")
    on_a_clock = mapping.time_kind in {"instant", "local"}
    for line, row in _rows(path, mapping, ends_with_newline):
        try:
            if on_a_clock:
                at, offset = stamp(_joined(row, mapping), mapping.date_order)
                whole.append(at)
                offsets.append(_agreed(offset, mapping))
            else:
                seconds.append(_elapsed(_joined(row, mapping), mapping))
            for column in columns:
                numbers[column].append(number(row[column], mapping.decimal))
        except Unreadable as error:
            raise TraceRefused(f"{error}; correct the mapping, or the file.", line) from error
        lines.append(line)
        if tell and not line % TELL_LINES:
            tell(line)
    return Table(
        np.array(whole, dtype=np.int64) if on_a_clock else None,
        np.array(offsets, dtype=np.int64) if mapping.time_kind == "instant" else None,
        None if on_a_clock else np.array(seconds, dtype=float),
        {column: np.array(values, dtype=float) for column, values in numbers.items()},
        np.array(lines, dtype=np.int64),
    )


def number(text: str, decimal: str, most: float = MOST) -> float:
    """A figure; nothing where the cell is empty (as NaN); anything else is unreadable."""
    plain = text.strip()
    if not plain:
        return float("nan")
    if KINDS["no number"].fullmatch(plain):
        raise Unreadable(f"“{plain[:20]}” stands where a figure belongs")
    if not KINDS["number"].fullmatch(plain) or (decimal == "." and "," in plain) or (decimal == "," and "." in plain):
        raise Unreadable(f"“{plain[:20]}” is no figure with a decimal {'comma' if decimal == ',' else 'point'}")
    value = float(plain.replace(",", "."))
    if abs(value) > most:
        raise Unreadable(f"“{plain[:20]}” is beyond all measure")
    return value


def _rows(path: Path, mapping: Mapping, ends_with_newline: bool) -> Iterator[tuple[int, list[str]]]:
    with path.open(encoding="utf-8-sig", newline="") as text:
        broken: tuple[int, int] | None = None
        for line, row in _parted(text, mapping):
            if broken:
                raise TraceRefused(_misshapen(broken[1], mapping), broken[0])
            if not row or (len(row) == 1 and not row[0].strip()):
                continue
            while len(row) > mapping.column_count and not row[-1].strip():
                row.pop()  # a sign of parting at the end of the line, with nothing behind it
            if len(row) != mapping.column_count:
                broken = (line, len(row))
                continue
            yield line, row
        if broken and not ends_with_newline:
            raise TraceRefused("the last line was cut off before its end: export or copy the file again.", broken[0])
        if broken:
            raise TraceRefused(_misshapen(broken[1], mapping), broken[0])


def _parted(text: TextIO, mapping: Mapping) -> Iterator[tuple[int, list[str]]]:
    """Lines below the headings with their numbers, cell by cell."""
    reader = csv.reader(text, delimiter=mapping.delimiter)
    try:
        for _ in range(mapping.skip):
            text.readline()
        for row in reader:
            yield reader.line_num + mapping.skip, row
    except csv.Error as error:
        said = "cannot be parted into cells: a quotation mark stands open, or a cell is far too long; export it again."
        raise TraceRefused(said, reader.line_num + mapping.skip + 1) from error
    except UnicodeDecodeError as error:
        line = _undecodable(Path(text.name))
        raise TraceRefused("holds a character of another encoding: export the file again as UTF-8.", line) from error


def _undecodable(path: Path) -> int | None:
    """The line itself: the text is decoded by larger pieces."""
    with path.open("rb") as file:
        return next((number for number, line in enumerate(file, 1) if not _is_utf8(line)), None)


def _is_utf8(line: bytes) -> bool:
    try:
        line.decode()
    except UnicodeDecodeError:
        return False
    return True


def _misshapen(found: int, mapping: Mapping) -> str:
    return (
        f"has {found} column{'s' if found != 1 else ''} where the lines before it have {mapping.column_count}: "
        "take out what is no sample, or export the file again."
    )


def _joined(row: list[str], mapping: Mapping) -> str:
    return " ".join(row[column].strip() for column in mapping.time_columns)


def _agreed(offset: int | None, mapping: Mapping) -> int:
    """A file says its offset in every line or in none."""
    if mapping.time_kind == "instant" and offset is None:
        raise Unreadable("the time has no offset from UTC, which other lines have")
    if mapping.time_kind == "local" and offset is not None:
        raise Unreadable("the time has an offset from UTC, which other lines have not")
    return offset or 0


def _elapsed(text: str, mapping: Mapping) -> float:
    if mapping.time_kind == "elapsed" and mapping.elapsed_unit == "dhms":
        return duration(text)
    value = number(text, mapping.decimal, sys.float_info.max)  # times are held against the calendar later
    if value != value:
        raise Unreadable("the time is missing")
    return value * ELAPSED_UNITS[mapping.elapsed_unit or "s"]
