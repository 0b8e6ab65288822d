"""From a table of the scenario to the values of a row: names looked up, numbers read as a form would read them."""

from datetime import datetime, time
from typing import Any

from django.db import models
from django.utils import timezone

from records import dating, units
from records.models import Party, Photo, Term

Table = dict[str, Any]

# How a related row is called in the scenario; everything else goes by its number.
CALLED_BY: dict[type[models.Model], str] = {Party: "initials", Photo: "original_name", Term: "label"}
NOON = time(12)


class Written(float):
    """A number of the scenario that remembers how it stands there: 0.60 was read to a hundredth."""

    def __new__(cls, text: str) -> "Written":
        number = super().__new__(cls, text)
        number.text = text
        return number


def instant(value: Any) -> datetime:
    """An aware instant: as written, a local time, or noon of a day."""
    if not isinstance(value, datetime):
        value = datetime.combine(value, NOON)
    return value if value.tzinfo else timezone.make_aware(value)


def find(model: type[models.Model], name: str, **among: Any) -> Any:
    """The row that the scenario calls so."""
    columns = {column.name for column in model._meta.get_fields()}
    plain = "number" if "number" in columns else "item__number" if "item" in columns else "name"
    return model._default_manager.get(**{CALLED_BY.get(model, plain): name}, **among)


def values_of(model: type[models.Model], table: Table) -> dict[str, Any]:
    """What the columns of a row are given, with the words in which its numbers were written."""
    values: dict[str, Any] = {}
    typed: dict[str, Any] = {}
    for name, written in table.items():
        column = model._meta.get_field(name)
        if isinstance(column, models.FloatField) and units.suffix_of(name):
            parsed = _quantity(name, written)
            values[name], typed[name] = parsed.canonical, parsed.as_typed()
        else:
            values[name] = _value(column, written)
            values |= _bounds(model, name, written)
    return values | ({"as_typed": typed} if typed else {})


def build(model: type[models.Model], table: Table, *, unset: tuple[str, ...] = (), **more: Any) -> Any:
    """A row, checked as a form checks it and not yet saved; `unset` names what a service will fill in."""
    row = model(**values_of(model, table), **more)
    row.full_clean(exclude=unset)
    return row


def save(model: type[models.Model], table: Table, **more: Any) -> Any:
    """A row of its own, saved, with what it is joined to (lists in the table)."""
    many = {name: value for name, value in table.items() if model._meta.get_field(name).many_to_many}
    row = build(model, {name: value for name, value in table.items() if name not in many}, **more)
    row.save()
    for name, names in many.items():
        related = model._meta.get_field(name).related_model
        among = model._meta.get_field(name).get_limit_choices_to() if related is Term else {}
        getattr(row, name).set([find(related, each, **among) for each in names])
    return row


def _quantity(name: str, written: Any) -> units.Parsed:
    """“71.36 ± 0.01 g”, a bare number in the column's unit, or a table that says how the number is known."""
    about = written if isinstance(written, dict) else {"text": written}
    given = about["text"]
    text = given if isinstance(given, str) else getattr(given, "text", None) or units.plain(given)
    parsed = units.parse(text, units.suffix_of(name) or "")
    return units.Parsed(
        parsed.number, parsed.unit, parsed.canonical, parsed.plus_minus, parsed.text,
        about.get("kind", "measured"), about.get("method", ""),
    )  # fmt: skip


def _value(column: models.Field, written: Any) -> Any:
    if isinstance(column, models.ForeignKey):
        among = column.get_limit_choices_to() if column.related_model is Term else {}
        return find(column.related_model, written, **among)
    if isinstance(column, models.DateTimeField):
        return instant(written)
    return written


def _bounds(model: type[models.Model], name: str, written: Any) -> dict[str, Any]:
    """Earliest and latest day of a date that was written in words."""
    stem = name.removesuffix("words")
    if stem == name or not any(column.name == f"{stem}edtf" for column in model._meta.get_fields()):
        return {}
    read = dating.read(written)
    return {f"{stem}edtf": read.edtf, f"{stem}earliest": read.earliest, f"{stem}latest": read.latest}
