"""The lines of a sheet with those that were struck out, in one time order: for showing, never for counting."""

from itertools import chain
from math import nan

from django.db.models import Value

from process.models import Event, Reading, Run, Weighing
from process.summaries.sheet import Line, Sheet
from records.models import Item


def lines_with_struck(run: Run, sheet: Sheet) -> list[Line]:
    """What the page and the report show."""
    gone = chain.from_iterable(
        model.every.filter(run=run, struck_at__isnull=False).select_related("person", "struck_by")
        for model in _where_some_are(run)
    )
    lines = [*sheet.lines, *(Line(row, nan) for row in gone)]
    return sorted(lines, key=lambda line: (line.row.at, isinstance(line.row, Reading)))


def struck_weighings(item: Item) -> list[Weighing]:
    """Of a core or a shell: shown where it stood, counted nowhere."""
    rows = Weighing.every.filter(item=item, struck_at__isnull=False)
    return list(rows.select_related("person", "struck_by").order_by("at", "pk"))


def _where_some_are(run: Run) -> list[type[Reading] | type[Event]]:
    """Readings, events, both or neither: known with the run (`with_traces`), or asked in one question."""
    by_name = {"reading": Reading, "event": Event}
    if hasattr(run, "has_struck_reading"):
        return [model for name, model in by_name.items() if getattr(run, f"has_struck_{name}")]
    asked = [
        model.every.filter(run=run, struck_at__isnull=False).order_by().values_list(Value(name), flat=True)
        for name, model in by_name.items()
    ]
    return [by_name[name] for name in asked[0].union(asked[1])]
