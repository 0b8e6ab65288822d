"""The lines of a sheet with those that were struck out, in one time order: for showing, never for counting."""

from itertools import chain
from math import nan

from process.models import Event, Reading, Run
from process.summaries.sheet import Line, Sheet


def lines_with_struck(run: Run, sheet: Sheet) -> list[Line]:
    """What the page and the report show."""
    gone = chain.from_iterable(
        model.every.filter(run=run, struck_at__isnull=False).select_related("person", "struck_by")
        for model in (Reading, Event)
    )
    lines = [*sheet.lines, *(Line(row, nan) for row in gone)]
    return sorted(lines, key=lambda line: (line.row.at, isinstance(line.row, Reading)))
