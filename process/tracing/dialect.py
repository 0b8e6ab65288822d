"""How the lines are parted into cells: delimiter, decimal sign, and where the samples begin."""

import csv
import re
from dataclasses import dataclass

from process.tracing.cells import KINDS, kind_of
from process.tracing.errors import TraceRefused

SPACES = " "  # one or more of them: columns set beneath each other
DELIMITERS = {",": "comma", ";": "semicolon", "\t": "tab", "|": "upright stroke", SPACES: "spaces"}
WIDE = re.compile(r"\s{2,}|\t")
MOST_COLUMNS = 200
LOOKED_AT = 300  # lines of the head
CLEAN = set(KINDS) | {"blank"}


@dataclass(frozen=True)
class Dialect:
    """`skip` counts the lines before the first sample; `above` are the lines with as many cells that stand there."""

    delimiter: str
    decimal: str
    skip: int
    column_count: int
    above: tuple[tuple[str, ...], ...]
    rows: tuple[tuple[str, ...], ...]


def dialect_of(lines: tuple[str, ...], delimiter: str = "") -> Dialect:
    """The parting by which the most cells are plain numbers and times, or the one that a person names."""
    looked_at = lines[:LOOKED_AT]
    signs = [delimiter] if delimiter else [sign for sign in DELIMITERS if sign != SPACES]
    found = [each for sign in signs if (each := _by(sign, looked_at))]
    if (
        not found and not delimiter
    ):  # times and headings hold spaces too, so they part columns only where nothing else does
        found = [each for each in [_by(SPACES, looked_at)] if each]
    if not found:
        how = DELIMITERS[delimiter] if delimiter else "comma, semicolon, tab, upright stroke or spaces"
        raise TraceRefused(
            f"no table of samples is found: lines with at least a time and a current, parted by {how}. "
            "Export the trace so, or take out what is no sample."
        )
    _, dialect = max(found, key=lambda pair: pair[0])
    if dialect.column_count > MOST_COLUMNS:
        raise TraceRefused(
            f"has {dialect.column_count} columns, more than the {MOST_COLUMNS} that are taken: no logger’s trace.",
            dialect.skip + 1,
        )
    return dialect


def split(line: str, delimiter: str) -> tuple[str, ...]:
    return tuple(line.split()) if delimiter == SPACES else tuple(next(csv.reader([line], delimiter=delimiter), []))


def _names(line: str, delimiter: str, width: int) -> tuple[str, ...]:
    """Headings that are set in columns may hold single spaces; a mark of comment is no heading."""
    if delimiter != SPACES:
        return split(line, delimiter)
    plain = line.strip().lstrip("#% ")
    wide = tuple(WIDE.split(plain))
    names = wide if len(wide) == width else tuple(plain.split())
    return names if len(names) == width else ()


def _by(delimiter: str, lines: tuple[str, ...]) -> tuple[tuple[float, int], Dialect] | None:
    if not any(delimiter in line for line in lines):
        return None
    cells = [split(line, delimiter) if line.strip() else () for line in lines]
    counts = [len(row) for row in cells if len(row) > 1]
    if not counts:
        return None
    width = max(set(counts), key=lambda count: (counts.count(count), count))
    first = next((i for i, row in enumerate(cells) if len(row) == width and is_sample(row)), None)
    if first is None:
        return None
    rows = tuple(row for row in cells[first:] if len(row) == width)
    decimal = _decimal(rows, delimiter)
    headings = [_names(line, delimiter, width) for line in lines[max(0, first - 2) : first] if line.strip()]
    above = tuple(row for row in headings if abs(len(row) - width) <= 1)
    return _score(rows, cells[first:], width), Dialect(delimiter, decimal, first, width, above, rows)


def is_sample(row: tuple[str, ...]) -> bool:
    """A line of samples holds figures, and no more words than figures."""
    kinds = [kind_of(cell) for cell in row]
    figures = [kind for kind in kinds if kind not in {"word", "blank"}]
    return len(figures) >= 2 and kinds.count("word") <= len(figures)


def _score(rows: tuple[tuple[str, ...], ...], all_rows: list[tuple[str, ...]], width: int) -> tuple[float, int]:
    cells = [kind_of(cell) for row in rows for cell in row]
    clean = sum(kind in CLEAN for kind in cells) / len(cells)
    even = len(rows) / max(1, sum(bool(row) for row in all_rows))
    return round(clean * even, 2), width


def _decimal(rows: tuple[tuple[str, ...], ...], delimiter: str) -> str:
    if delimiter == ",":
        return "."
    numbers = [cell for row in rows for cell in row if kind_of(cell) == "number"]
    commas, points = (sum(sign in number for number in numbers) for sign in (",", "."))
    return "," if commas > points else "."
