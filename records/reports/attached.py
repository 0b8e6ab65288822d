"""The record behind a paper as JSON that is readable without this program: one generic function over rows."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import asdict
from datetime import UTC, date, datetime
from typing import Any

from django.conf import settings
from django.db import models
from django.db.models import Max

from records import units
from records.extensions import Limit, PaperContext
from records.figures import Figure
from records.models import Tracked

ABOUT = (
    "Every row carries its key, its version and the number of its last entry in the history. A number stands in the "
    "unit beside it; “as_typed” keeps what a person wrote. Figures under “calculated” follow from the rows."
)
KEPT_BACK = {"as_typed", "search_text", "token", "version"}


def record(
    paper: str,
    number: str,
    context: PaperContext,
    rows: Mapping[str, Iterable[Tracked]],
    figures: Iterable[Figure] = (),
    limits: Iterable[Limit] = (),
) -> dict[str, Any]:
    """All rows of a paper, in sections that say what they are."""
    sections = {title: list(found) for title, found in rows.items()}
    last = _last_entries(row for found in sections.values() for row in found)
    return {
        "about": ABOUT,
        "museum": settings.MUSEUM_NAME,
        "paper": {
            "kind": paper, "number": number, "version": context.edition_count, "issued_at": _plain(context.issued_at),
            "issued_by": context.issued_by, "issued_as": context.role, "page_size": context.page_size,
        },
        "rows": {title: [_row(row, last) for row in found] for title, found in sections.items()},
        "limits of use": [asdict(limit) for limit in limits],
        "calculated": [_figure(figure) for figure in figures if figure is not None and figure.value is not None],
    }  # fmt: skip


def _last_entries(rows: Iterable[Tracked]) -> dict[tuple[str, Any], int]:
    """The number of the last entry in the history of each row, one query for each kind of row."""
    keys = defaultdict(set)
    for row in rows:
        keys[type(row)].add(row.pk)
    found: dict[tuple[str, Any], int] = {}
    for model, wanted in keys.items():
        name = model._meta.pk.attname
        entries = (
            model.history.order_by().filter(**{f"{name}__in": wanted}).values(name).annotate(last=Max("history_id"))
        )
        found |= {(model._meta.label, entry[name]): entry["last"] for entry in entries}
    return found


def _row(row: Tracked, last: Mapping[tuple[str, Any], int]) -> dict[str, Any]:
    kind = row._meta.label
    fields = [f for f in row._meta.concrete_fields if not f.primary_key and f.name not in KEPT_BACK]
    return {
        "kind": str(row._meta.verbose_name), "table": kind, "key": row.pk, "version": row.version,
        "history": last.get((kind, row.pk)),
        "columns": {f.name: _column(row, f) for f in fields},
    }  # fmt: skip


def _column(row: Tracked, field: models.Field) -> dict[str, Any]:
    value = getattr(row, field.attname)
    answer: dict[str, Any] = {"label": str(field.verbose_name), "value": _plain(value)}
    if isinstance(field, models.ForeignKey):
        answer["words"] = str(getattr(row, field.name) or "")
    elif field.choices and value not in (None, ""):
        answer["words"] = str(getattr(row, f"get_{field.name}_display")())
    suffix = units.suffix_of(field.name) if isinstance(field, models.FloatField) else None
    if suffix:
        answer["unit"] = units.SUFFIXES[suffix]
    if typed := row.as_typed.get(field.name):
        answer["as_typed"] = typed
    return answer


def _figure(figure: Figure) -> dict[str, Any]:
    answer = {
        "label": figure.label, "value": figure.value, "unit": units.SUFFIXES[figure.suffix], "kind": figure.kind,
        "plus_minus": figure.plus_minus, "note": figure.note,
    }  # fmt: skip
    if figure.working is not None:
        answer |= {
            "equation": figure.working.equation,
            "substitution": figure.working.substitution,
            "source": figure.working.source,
        }
    return answer


def _plain(value: Any) -> Any:
    """As JSON can carry it: instants in UTC, anything unknown as its words."""
    if isinstance(value, datetime):
        return value.astimezone(UTC).isoformat()
    if isinstance(value, date):
        return value.isoformat()
    return value if isinstance(value, str | int | float | bool | list | dict | type(None)) else str(value)
