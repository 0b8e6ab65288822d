"""Lists: pages by keyset, and an export of exactly what is shown."""

import csv
import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from operator import attrgetter
from typing import Any

from django.core.exceptions import ValidationError
from django.db.models import Model, Q, QuerySet
from django.http import HttpRequest, HttpResponseBase, StreamingHttpResponse
from django.utils.text import slugify

from records import clock

PAGE_SIZE = 50
SEPARATOR = "~"
LARGEST_KEY = 2**63 - 1  # of a database
Column = tuple[str, str | Callable[[Any], Any]]

# A spreadsheet would run a cell that begins like this; a plain negative number is let through.
_RUNS = re.compile(r"[=+@\t\r]|-(?![0-9.]+$)")


@dataclass(frozen=True)
class Page:
    """One page of rows, and the key after which the next one begins (None: this is the last)."""

    rows: list[Any]
    next_key: str | None = None


def page(rows: QuerySet, request: HttpRequest, key: str | tuple[str, ...] = "number", size: int = PAGE_SIZE) -> Page:
    """The rows after `?after=`, in the order of one unique column, or of several of which the last is unique.

    A minus before the first turns the order round. An index over them lets the database seek to the place instead
    of counting its way there: hence the bound on the first column beside the full comparison.
    """
    columns = (key,) if isinstance(key, str) else key
    backwards = columns[0].startswith("-")
    names = [column.removeprefix("-") for column in columns]
    rows = rows.order_by(*(f"-{name}" if backwards else name for name in names))
    after = _read(rows.model, names, request.GET.get("after", ""))
    if after:
        rows = rows.filter(_beyond(names, after, "lt" if backwards else "gt"))
    found = list(rows[: size + 1])
    more = len(found) > size
    return Page(found[:size], SEPARATOR.join(str(getattr(found[size - 1], n)) for n in names) if more else None)


def _beyond(names: list[str], after: list[Any], way: str) -> Q:
    """Rows behind a row: a later first column, or the same one and a later second, and so on."""
    beyond = Q()
    for place, (name, value) in enumerate(zip(names, after, strict=True)):
        same = dict(zip(names[:place], after[:place], strict=True))
        beyond |= Q(**same, **{f"{name}__{way}": value})
    return Q(**{f"{names[0]}__{way}e": after[0]}) & beyond


def _read(model: type[Model], names: list[str], text: str) -> list[Any] | None:
    """The key from the address; an address that was tampered with begins at the beginning."""
    parts = text.split(SEPARATOR, len(names) - 1)
    if not text or "\0" in text or len(parts) != len(names):
        return None
    fields = [model._meta.pk if name == "pk" else model._meta.get_field(name) for name in names]
    try:
        found = [field.to_python(part) for field, part in zip(fields, parts, strict=True)]
    except ValidationError:
        return None
    return None if any(isinstance(value, int) and abs(value) > LARGEST_KEY for value in found) else found


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
