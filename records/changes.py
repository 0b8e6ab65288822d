"""Who changed what of a thing and when, read from the kept versions of its rows."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from datetime import date, datetime
from itertools import pairwise
from typing import Any

from django.db import models
from django.utils import timezone

from records import units
from records.models import DescentLink, Item, Mark, Measurement, Party, Photo, Place, ProvenanceEvent, SurveyDate

# What the register keeps for itself, or shows in another field's words.
SILENT = {
    "id", "version", "created_at", "set_at", "as_typed", "search_text", "date_edtf", "date_earliest", "date_latest",
    "item", "run", "pull", "token", "target",
    "path", "sha256", "media_type", "size_bytes_count", "width_px_count", "height_px_count",
}  # fmt: skip
PARTS = (
    (Measurement, "item", "measurement"), (Photo, "item", "photograph"), (Mark, "item", "mark"),
    (ProvenanceEvent, "item", "provenance"), (DescentLink, "target", "step of descent"),
    (SurveyDate, "item", "date of the next survey"),
)  # fmt: skip
NAMED = (Party, Place, Item, Photo)
SHOWN = 200
VERBS = {"+": "entered", "-": "removed", "~": ""}


@dataclass(frozen=True)
class Change:
    label: str
    before: str
    after: str


@dataclass(frozen=True)
class Entry:
    """As components/_history.html sets it."""

    at: datetime
    who: str
    what: str
    changes: list[Change] = field(default_factory=list)
    role: str = ""


def changes_of(item: Item) -> list[Entry]:
    """The latest changes of a thing and of the parts that are kept with it; latest first."""
    rows = [("", Item.history.filter(id=item.pk))]
    return changes_in(rows + [(noun, model.history.filter(**{f"{key}_id": item.pk})) for model, key, noun in PARTS])


def changes_in(rows: Iterable[tuple[str, models.QuerySet]], named: tuple[Any, ...] = ()) -> list[Entry]:
    """The same of any kept versions, each kind with its noun; the row that the page is about has none.

    `named` are models besides people, places and things whose rows are called by name.
    """
    kept = [(noun, _versions(versions)) for noun, versions in rows]
    names = _names((version for _, versions in kept for version in versions), (*NAMED, *named))
    found = [entry for noun, versions in kept for entry in _entries(versions, noun, names)]
    return sorted(found, key=lambda entry: entry.at, reverse=True)[:SHOWN]


def _versions(rows: models.QuerySet) -> list[Any]:
    return list(rows.select_related("history_user__party").order_by("id", "history_date", "history_id"))


def _entries(versions: list[Any], noun: str, names: dict[Any, str]) -> Iterator[Entry]:
    """One entry for each kept version, compared with the version before it of the same row."""
    for before, after in pairwise([None, *versions]):
        same = before is not None and before.id == after.id
        if entry := _entry(before if same else None, after, noun, names):
            yield entry


def _entry(before: Any, after: Any, noun: str, names: dict[Any, str]) -> Entry | None:
    """What a version changed; a part that is new or gone is told in one line."""
    changes = list(_differences(before, after, names)) if after.history_type == "~" else []
    verb = VERBS[after.history_type]
    if not changes and not verb:
        return None
    reason = f"({after.history_change_reason})" if after.history_change_reason else ""
    told = _told(after, names) if noun else ""
    what = " ".join(filter(None, [noun, f"{verb}:" if verb and told else verb, told, reason]))
    return Entry(after.history_date, _who(after.history_user), what, changes)


def _told(version: Any, names: dict[Any, str]) -> str:
    """A part in one line: everything that was written into it."""
    columns = [c for c in version.tracked_fields if c.name not in SILENT and not isinstance(c, models.BooleanField)]
    return ", ".join(filter(None, (_shown(version, column, names) for column in columns)))


def _who(user: Any) -> str:
    if user is None:
        return ""
    party = getattr(user, "party", None)
    return party.name if party else user.get_full_name() or user.get_username()


def _differences(before: Any, after: Any, names: dict[Any, str]) -> Iterator[Change]:
    for column in after.tracked_fields:
        if column.name in SILENT:
            continue
        old = _shown(before, column, names) if before else ""
        new = _shown(after, column, names)
        if old != new:
            yield Change(str(column.verbose_name), old, new)


def _shown(version: Any, column: models.Field, names: dict[Any, str]) -> str:
    """A stored value as a person reads it: choices in words, numbers with units, instants in the museum's time."""
    value = getattr(version, column.attname)
    if value is None or value == "":
        return ""
    if column.remote_field:
        return names.get((_named_by(column), value), f"no. {value}")
    if column.choices:
        return str(dict(column.flatchoices).get(value, value))
    if isinstance(column, models.FloatField) and (suffix := units.suffix_of(column.name)):
        return units.show(value, suffix)
    return _plain(value)


def _plain(value: Any) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, datetime):
        local = timezone.localtime(value)
        return f"{local.day} {local:%b %Y, %H:%M}"
    if isinstance(value, list):
        return ", ".join(map(str, value))
    return f"{value.day} {value:%b %Y}" if isinstance(value, date) else str(value)


def _named_by(column: models.Field) -> Any:
    """The model whose row names it: a mould or a core is named by its thing."""
    model: Any = column.remote_field.model
    return model._meta.pk.remote_field.model if model._meta.pk.remote_field else model


def _names(versions: Iterable[Any], named: tuple[Any, ...]) -> dict[tuple[Any, Any], str]:
    """Names of the people, places and things that any version points at, one query for each kind."""
    wanted: dict[Any, set[Any]] = {}
    for version in versions:
        for column in version.tracked_fields:
            value = getattr(version, column.attname) if column.remote_field else None
            if value is not None and column.name not in SILENT and _named_by(column) in named:
                wanted.setdefault(_named_by(column), set()).add(value)
    return {
        (model, row.pk): str(row)
        for model, keys in wanted.items()
        for row in model._base_manager.select_related().filter(pk__in=keys)
    }
