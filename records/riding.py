"""Rows of a small table that ride along with the question for what they belong to.

JSON carries numbers with 15 digits on SQLite: such rows are shown, and never saved.
"""

import json
from datetime import UTC, date, datetime
from typing import Any, TypeVar

from django.db.models import F, JSONField, Model, QuerySet, Subquery, Value
from django.db.models.functions import JSONObject

from records.models.json_rows import JsonRows

M = TypeVar("M", bound=Model)
Columns = tuple[str, ...]  # of the row itself, and “finish__label” of what it names


def as_json(columns: Columns) -> JSONObject:
    """One row as an object of JSON."""
    return JSONObject(**{name: F(name) for name in columns})


def riding(rows: QuerySet, columns: Columns) -> Subquery:
    """All rows, already narrowed to those of the outer row, as one list; in no order."""
    lists = rows.order_by().annotate(one=Value(1)).values("one").annotate(rows=JsonRows(as_json(columns)))
    return Subquery(lists.values("rows"))


def read_rows(model: type[M], found: list[dict[str, Any]] | None, **known: Any) -> list[M]:
    """The rows as they came; `known` are the things that the caller has in hand."""
    return [read_row(model, values, **known) for values in found or []]


def read_row(model: type[M], values: dict[str, Any], **known: Any) -> M:
    own = {name: _plain(model, name, value) for name, value in values.items() if "__" not in name}
    named: dict[str, dict[str, Any]] = {}
    for name, value in values.items():
        if "__" in name and value is not None:
            link, column = name.split("__")
            named.setdefault(link, {})[column] = value
    links = {link: model._meta.get_field(link).related_model(**columns) for link, columns in named.items()}
    return model(**own, **links, **known)


def _plain(model: type[Model], name: str, value: Any) -> Any:
    """Days are text in JSON; SQLite gives JSON inside JSON as text and yes and no as 1 and 0."""
    field = model._meta.get_field(name.removesuffix("_id") if name.endswith("_id") else name)
    if isinstance(field, JSONField):
        return json.loads(value) if isinstance(value, str) else value
    if field.get_internal_type() == "DateTimeField":
        return _aware(datetime.fromisoformat(value)) if value else None
    if field.get_internal_type() == "DateField":
        return date.fromisoformat(value[:10]) if value else None
    return value if field.is_relation else field.to_python(value)


def _aware(instant: datetime) -> datetime:
    return instant if instant.tzinfo else instant.replace(tzinfo=UTC)
