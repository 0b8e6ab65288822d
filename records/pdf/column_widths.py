"""How wide the columns of a table are: as their text needs, figures never broken, long prose gives way."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from records.pdf import fonts, glyphs, theme

CELL_SIZE = 8.8
SWATCH_ROOM = 14.0
HEADING_LIMIT = 90.0  # a longer heading breaks into lines
SAMPLE = 80  # rows looked at
MOST_SPARE = 0.8  # a table of few figures stays narrow, else the eye loses the line


@dataclass(frozen=True)
class ColumnText:
    """What stands in a column; an unbroken one holds figures."""

    heading: tuple[str, ...]
    cells: tuple[str, ...]
    swatch: bool
    unbroken: bool
    weight: float = 1.0  # of the room that is shared out: a column of sentences takes more


def _width(text: str, size: float) -> float:
    return glyphs.runs_width(glyphs.runs(text.replace("\n", " "), fonts.SANS_BOLD), size)


def _longest(texts: Sequence[str], size: float) -> float:
    return max((_width(text, size) for text in texts), default=0.0)


def _words(texts: Sequence[str]) -> list[str]:
    return list(dict.fromkeys(word for text in texts for word in re.split(r"[ \t\n]+", text)))  # a no-break space binds


def _natural_and_least(column: ColumnText, padding: float, table: float) -> tuple[float, float]:
    cells = column.cells[:SAMPLE]
    whole = _longest(cells, CELL_SIZE)
    heading = _longest(column.heading, theme.SMALL_SIZE)
    word = max(_longest(_words(cells), CELL_SIZE), _longest(_words(column.heading), theme.SMALL_SIZE))
    extra = padding + (SWATCH_ROOM if column.swatch else 0.0) + 1
    natural = max(whole, word, min(heading, HEADING_LIMIT)) + extra
    least = (max(whole, word) if column.unbroken else min(word, table / 3)) + extra
    return natural, least


def column_widths(columns: Sequence[ColumnText], table: float, padding: float) -> list[float]:
    """Spare room is shared out within reason, missing room is taken from the long texts."""
    sizes = [_natural_and_least(column, padding, table) for column in columns]
    natural, least = [n for n, _ in sizes], [small for _, small in sizes]
    spare = table - sum(natural)
    if spare >= 0:
        spare = min(spare, MOST_SPARE * sum(natural))
        return [n + spare * n / sum(natural) for n in natural]
    room = table - sum(least)
    if room < 0:
        return [small * table / sum(least) for small in least]
    # A text longer than the table is wide wishes for no more than that: else it starves the short ones beside it.
    pairs = zip(sizes, columns, strict=True)
    wishes = [max(min(n, table) - small, 0.0) * column.weight for (n, small), column in pairs]
    return [small + room * wish / (sum(wishes) or 1) for (_, small), wish in zip(sizes, wishes, strict=True)]
