"""The lines of a sheet with those that were struck out, in one time order: for showing, never for counting."""

from itertools import chain
from math import nan
from typing import Any

from django.db.models import Subquery, Value

from process.models import Event, Reading, Run, Weighing
from process.summaries.sheet import Line, Sheet
from records.models import Item
from records.riding import read_rows, riding


def lines_with_struck(run: Run, sheet: Sheet) -> list[Line]:
    """What the page and the report show."""
    gone = chain.from_iterable(
        model.every.filter(run=run, struck_at__isnull=False).select_related("person", "struck_by")
        for model in _where_some_are(run)
    )
    lines = [*sheet.lines, *(Line(row, nan) for row in gone)]
    return sorted(lines, key=lambda line: (line.row.at, isinstance(line.row, Reading)))


WEIGHED = (
    "id", "kind", "at", "mass_g", "as_typed", "balance", "conditions", "person__name",
    "struck_at", "struck_reason", "struck_by__name",
)  # fmt: skip


def weighings_riding(of: Any) -> Subquery:
    """Every weighing of a core or a shell, with those that were struck out, beside the question for something else."""
    return riding(Weighing.every.filter(item=of), WEIGHED)


def take_weighings(item: Item, found: list[dict[str, Any]] | None) -> list[Weighing]:
    """Leaves those that count on the row; gives back those struck out, shown where they stood, counted nowhere."""
    rows = sorted(read_rows(Weighing, found, item=item), key=lambda row: (row.at, row.pk))
    standing = item.weighings.all()
    standing._result_cache = [row for row in rows if not row.is_struck]
    item._prefetched_objects_cache = getattr(item, "_prefetched_objects_cache", {}) | {"weighings": standing}
    return [row for row in rows if row.is_struck]


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
