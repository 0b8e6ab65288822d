"""In whose hands a thing was, how long hands were on it, and how it ended: one question for the three tables."""

import json
from dataclasses import dataclass
from datetime import date
from typing import Any

from django.db.models import F, OuterRef, QuerySet, Subquery, Value
from django.db.models.functions import JSONObject

from records.models import Disposal, HandlingSession, Handover, Item, Party
from records.models.json_rows import JsonRows

COLUMNS = {
    Handover: ("number", "kind", "purpose", "agreed_on", "due_on", "out_on", "back_on", "called_off_on"),
    HandlingSession: ("id", "happened_on", "time_h", "people_count", "occasion", "seen", "as_typed"),
    Disposal: ("number", "reason", "decided_on", "authority", "way", "done_on", "method", "kept", "photo_id"),
}
ROWS = {"handover_rows": Handover, "session_rows": HandlingSession, "disposal_rows": Disposal}
PEOPLE = {Handover: ("party",), HandlingSession: ("supervised_by",), Disposal: ("decided_by", "done_by", "witness")}


@dataclass(frozen=True)
class Hands:
    handovers: list[Handover]
    sessions: list[HandlingSession]
    disposal: Disposal | None


def hands_of(item: Item) -> Hands:
    """Remembered on the row, for two parts of its page ask; a row that was read `with_hands` has them along."""
    if not hasattr(item, "_hands"):
        row = item if hasattr(item, "handover_rows") else with_hands(Item.objects.filter(pk=item.pk)).get()
        handovers, sessions, disposals = (
            [_read(model, values, item) for values in getattr(row, name) or []] for name, model in ROWS.items()
        )
        handovers.sort(key=lambda each: (each.agreed_on, each.number), reverse=True)
        sessions.sort(key=lambda each: (each.happened_on, each.pk), reverse=True)
        item._hands = Hands(handovers, sessions, next(iter(disposals), None))
    return item._hands


def with_hands(things: QuerySet[Item]) -> QuerySet[Item]:
    """The things with the rows of the three tables beside them."""
    return things.annotate(**{name: _rows(model) for name, model in ROWS.items()})


def _rows(model: type) -> Subquery:
    """All rows of the thing as one list of JSON, with the names of their people."""
    each = JSONObject(
        **{name: F(name) for name in COLUMNS[model]}, **{name: F(f"{name}__name") for name in PEOPLE[model]}
    )
    rows: QuerySet = model.objects.filter(item=OuterRef("pk")).order_by()
    return Subquery(rows.annotate(one=Value(1)).values("one").annotate(rows=JsonRows(each)).values("rows"))


def _read(model: type, values: dict[str, Any], item: Item) -> Any:
    """A row that is shown and never saved."""
    people = {name: Party(name=values[name]) for name in PEOPLE[model] if values[name]}
    plain = {name: _plain(name, values[name]) for name in COLUMNS[model]}
    return model(item=item, **plain, **people)


def _plain(name: str, value: Any) -> Any:
    """Days are text in JSON, and SQLite gives JSON inside JSON as text too."""
    if name == "as_typed":
        return json.loads(value) if isinstance(value, str) else value
    return date.fromisoformat(value[:10]) if value and name.endswith("_on") else value
