"""Lists: pages by keyset, and an export of exactly what is shown."""

import csv
import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from operator import attrgetter
from typing import Any

from django.core.exceptions import ValidationError
from django.db.models import Model, QuerySet
from django.http import HttpRequest, HttpResponseBase, StreamingHttpResponse
from django.utils.text import slugify

from records import clock

PAGE_SIZE = 50
Column = tuple[str, str | Callable[[Any], Any]]

# A spreadsheet would run a cell that begins like this; a plain negative number is let through.
_RUNS = re.compile(r"[=+@\t\r]|-(?![0-9.]+$)")


@dataclass(frozen=True)
class Page:
    """One page of rows, and the key after which the next one begins (None: this is the last)."""

    rows: list[Any]
    next_key: str | None = None


def page(rows: QuerySet, request: HttpRequest, key: str = "number", size: int = PAGE_SIZE) -> Page:
    """The rows after `?after=`, in the order of a unique column; `key="-number"` turns the order round.

    A single column with an index: the database seeks instead of counting its way there.
    """
    column, backwards = key.removeprefix("-"), key.startswith("-")
    rows = rows.order_by(key)
    after = _read(rows.model, column, request.GET.get("after", ""))
    if after is not None:
        rows = rows.filter(**{f"{column}__{'lt' if backwards else 'gt'}": after})
    found = list(rows[: size + 1])
    more = len(found) > size
    return Page(found[:size], str(getattr(found[size - 1], column)) if more else None)


def _read(model: type[Model], column: str, text: str) -> Any:
    """The key from the address; an address that was tampered with begins at the beginning."""
    if not text or "\0" in text:
        return None
    field = model._meta.pk if column == "pk" else model._meta.get_field(column)
    try:
        return field.to_python(text)
    except ValidationError:
        return None


def wants_export(request: HttpRequest) -> bool:
    return request.GET.get("export") == "csv"


def export(rows: Iterable[Any], columns: Sequence[Column], name: str) -> HttpResponseBase:
    """The rows as CSV; a column is (heading, attribute path or function), its unit in the heading."""
    response = StreamingHttpResponse(_lines(rows, columns), content_type="text/csv; charset=utf-8")
    response["Content-Disposition"] = f'attachment; filename="{slugify(name)}-{clock.today()}.csv"'
    return response


def _lines(rows: Iterable[Any], columns: Sequence[Column]) -> Iterator[str]:
    """Each line as text; the mark at the start tells spreadsheets that this is UTF-8."""
    writer = csv.writer(_Echo())
    readers = [attrgetter(reader.replace("__", ".")) if isinstance(reader, str) else reader for _, reader in columns]
    yield "\ufeff" + writer.writerow([heading for heading, _ in columns])
    for row in rows.iterator(chunk_size=500) if isinstance(rows, QuerySet) else rows:
        yield writer.writerow([_cell(reader(row)) for reader in readers])


class _Echo:
    """A file that hands each line back instead of keeping it."""

    def write(self, line: str) -> str:
        return line


def _cell(value: Any) -> Any:
    """What stands in a cell; a path may end in a method such as `get_kind_display`."""
    if callable(value):
        value = value()
    if value is None:
        return ""
    if isinstance(value, int | float):
        return value
    text = str(value)
    return f"'{text}" if _RUNS.match(text) else text
