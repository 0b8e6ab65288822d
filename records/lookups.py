"""Finding a record by what people write on paper: its number, or a name. For lists that grow without end."""

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass

from django.db.models import Model, Q, QuerySet, Value
from django.db.models.functions import Lower, Replace

from records.models import Commission, Item, Party, Place
from records.searching import find, fold

MOST = 20
LONGEST = 2000
Kind, Status = Item.Kind, Item.Status


@dataclass(frozen=True)
class Lookup:
    """Which rows are offered, by which column they are called, and what is said where one is not there."""

    noun: str
    rows: Callable[[], QuerySet]
    key: str = "number"
    about: Callable[[Model], str] = lambda row: ""
    hint: str = ""

    def called(self, row: Model) -> str:
        return getattr(row, self.key)

    def everything(self) -> QuerySet:
        return self.rows().model.objects.all()

    def named(self, names: Iterable[str], rows: QuerySet | None = None) -> dict[str, Model]:
        """Those of the names that are there, whatever their capitals and spaces."""
        names = list(names)
        rows = self.rows() if rows is None else rows
        squeezed = Replace(Lower(self.key), Value(" "), Value(""))
        alike = Q(_squeezed__in={squeeze(name) for name in names}) | Q(**{f"{self.key}__in": names})
        found: dict[str, Model] = {}
        for row in rows.alias(_squeezed=squeezed).filter(alike):
            found.setdefault(squeeze(self.called(row)), row)
        return found

    def suggest(self, typed: str) -> list[Model]:
        """A few rows in which every typed word occurs."""
        if not fold(typed):
            return []
        rows = self.rows()
        if rows.model is Item:
            return list(find(rows, typed)[:MOST])
        for word in typed.split():
            rows = rows.filter(**{f"{self.key}__icontains": word})
        return list(rows[:MOST])


def squeeze(name: str) -> str:
    """A number as it is compared: small letters, no spaces.

    >>> squeeze(" ovm. 1931.0044 ")
    'ovm.1931.0044'
    """
    return "".join(name.lower().split())


def split(text: str, lookup: Lookup) -> tuple[list[Model], list[str]]:
    """Rows named in a text, and the names that are not there. Lines may hold several, apart by commas."""
    lines = [" ".join(line.split()) for line in text.replace("\0", "").splitlines()]
    pieces = {line: [" ".join(part.split()) for part in re.split("[,;]", line)] for line in lines}
    found = lookup.named([*lines, *(part for parts in pieces.values() for part in parts)])
    rows: dict[int, Model] = {}
    missing: list[str] = []
    for line in lines:
        # A number may itself hold a comma: the whole line is tried first.
        for name in [line] if squeeze(line) in found else filter(None, pieces[line]):
            row = found.get(squeeze(name))
            if row is not None:
                rows.setdefault(row.pk, row)
            elif name not in missing:
                missing.append(name)
    return list(rows.values()), missing


def last_of(text: str) -> str:
    """What is being typed now: the part after the last comma or line end."""
    return re.split("[,;\n]", text.replace("\0", ""))[-1].strip()


def _things(hint: str, rows: Callable[[], QuerySet]) -> Lookup:
    return Lookup("thing", rows, about=lambda row: row.title, hint=hint)


def _not_gone() -> QuerySet:
    return Item.objects.exclude(status__in=[Status.DESTROYED, Status.LEFT])


LOOKUPS: dict[str, Lookup] = {
    "things": _things("", Item.objects.all),
    "originals": _things("a copy is asked of originals and of copies", lambda: Item.objects.originals()),
    "in-hand": _things("it was destroyed or has left the museum", _not_gone),
    "models": _things("a mould is not taken from a mould or a shell",
                      lambda: Item.objects.exclude(kind__in=[Kind.MOULD, Kind.SHELL])),
    "commissions": Lookup("commission", lambda: Commission.objects.select_related("requester"),
                          about=lambda row: f"{row.requester}"),
    "parties": Lookup("person or institution", Party.objects.all, "name", lambda row: row.function),
    "places": Lookup("place", lambda: Place.objects.select_related("within"), "name",
                     lambda row: f"in {row.within}" if row.within else ""),
}  # fmt: skip
