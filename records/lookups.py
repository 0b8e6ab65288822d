"""Finding a record by what people write on paper: its number, or a name. For lists that grow without end."""

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace

from django.db.models import Model, Q, QuerySet, Value
from django.db.models.functions import Lower, Replace

from records.models import Commission, ConditionReport, Item, Party, Place
from records.searching import find, fold, spellings

MOST = 20  # are offered at once
LONGEST, LONGEST_LIST = 2000, 40_000
Kind, Status = Item.Kind, Item.Status


@dataclass(frozen=True)
class Lookup:
    """Which rows are offered, by which column they are called, and what is said where one is not there."""

    noun: str
    rows: Callable[[], QuerySet]
    key: str = "number"
    also: str = ""  # a second column by which a row may be called, if no other is called so
    about: Callable[[Model], str] = lambda row: ""
    hint: str = ""
    begun: Callable[[str, str], Model] | None = None  # a new row out of the name and its kind
    kinds: Sequence[tuple[str, str]] = ()  # of which kind a new one may be, where that is asked
    entered_at: str = ""  # the route where a new one is entered
    at_hand: Callable[[QuerySet], QuerySet] | None = None  # those few that are named most, offered before one types
    within: Callable[[QuerySet, str], QuerySet] | None = None  # rows that belong to one record, by its number

    @property
    def model(self) -> type[Model]:
        return self.rows().model

    def inside(self, number: str) -> "Lookup":
        """The same look-up among the rows of one record alone."""
        if not number or self.within is None:
            return self
        within = self.within
        return replace(self, rows=lambda: within(self.rows(), number))

    def called(self, row: Model) -> str:
        for part in self.key.split("__"):
            row = getattr(row, part)
        return str(row)

    def everything(self) -> QuerySet:
        """Every row there is, also those that are not offered here."""
        rows = self.model._default_manager.all()
        return rows.select_related(*self.key.split("__")[:-1]) if "__" in self.key else rows

    def alike(self, names: Iterable[str], rows: QuerySet | None = None) -> dict[str, list[Model]]:
        """For each name the rows that are called so, whatever their capitals and spaces."""
        names = list(names)
        rows = self.rows() if rows is None else rows
        squeezed = {squeeze(name) for name in names}
        rows = rows.alias(_squeezed=squeezed_column(self.key))
        wanted = Q(_squeezed__in=squeezed) | Q(**{f"{self.key}__in": names})
        if self.also:
            rows = rows.alias(_also=squeezed_column(self.also))
            wanted |= Q(_also__in=squeezed - {""})
        found = list(rows.filter(wanted))
        return {name: self._best(name, found) for name in names}

    def _best(self, name: str, found: list[Model]) -> list[Model]:
        """What is called just so goes before what differs in capitals, and a name before initials."""
        exact = [row for row in found if self.called(row) == name]
        squeezed = [row for row in found if squeeze(self.called(row)) == squeeze(name)]
        second = [row for row in found if self.also and squeeze(getattr(row, self.also)) == squeeze(name)]
        return exact or squeezed or second

    def named(self, names: Iterable[str], rows: QuerySet | None = None) -> dict[str, Model]:
        """The rows of those names that are there and stand for one alone."""
        return {name: found[0] for name, found in self.alike(names, rows).items() if len(found) == 1}

    def nearest(self) -> list[Model]:
        return list(self.at_hand(self.rows())[:MOST]) if self.at_hand else []

    def suggest(self, typed: str) -> list[Model]:
        """A few rows in which every typed word occurs."""
        if not fold(typed):
            return []
        rows = self.rows()
        if rows.model is Item:
            return list(find(rows, typed)[:MOST])
        for word in typed.split()[:8]:
            occurs = Q(**{f"{self.also}__iexact": word}) if self.also else Q()
            for spelling in spellings(word):
                occurs |= Q(**{f"{self.key}__icontains": spelling})
            rows = rows.filter(occurs)
        return list(rows[:MOST])


def squeeze(name: str) -> str:
    """A number or name as it is compared: small letters, no spaces, one apostrophe.

    >>> squeeze(" ovm. 1931.0044 ")
    'ovm.1931.0044'
    """
    return "".join(name.lower().replace("’", "'").split())


def squeezed_column(column: str) -> Replace:
    """The same of a column, within the question to the database."""
    return Replace(Replace(Lower(column), Value(" "), Value("")), Value("’"), Value("'"))


def split(text: str, lookup: Lookup) -> tuple[list[Model], list[str]]:
    """Rows named in a text, and the names that are not there. Lines may hold several, apart by commas."""
    lines = [" ".join(line.split()) for line in text.replace("\0", "").splitlines()]
    pieces = {line: [" ".join(part.split()) for part in re.split("[,;]", line)] for line in lines}
    found = lookup.named([*lines, *(part for parts in pieces.values() for part in parts)])
    rows: dict[int, Model] = {}
    missing: list[str] = []
    for line in lines:
        # A number may itself hold a comma: the whole line is tried first.
        for name in [line] if line in found else filter(None, pieces[line]):
            row = found.get(name)
            if row is not None:
                rows.setdefault(row.pk, row)
            elif name not in missing:
                missing.append(name)
    return list(rows.values()), missing


def last_of(text: str) -> str:
    """What is being typed now: the part after the last comma or line end."""
    return re.split("[,;\n]", text.replace("\0", ""))[-1].strip()


def _things(hint: str, rows: Callable[[], QuerySet]) -> Lookup:
    return Lookup("thing", rows, about=lambda row: row.title, hint=hint, entered_at="item_add")


def _not_gone() -> QuerySet:
    return Item.objects.exclude(status__in=[Status.DESTROYED, Status.LEFT])


def _of_the_piece(rows: QuerySet, number: str) -> QuerySet:
    return rows.filter(Q(originals__number=number) | Q(copies__number=number)).distinct()


def _with_day(report: ConditionReport) -> str:
    day = report.examined_on
    unsigned = "" if report.is_signed else ", not signed"
    return f"{report.get_occasion_display()}, {day.day} {day:%B %Y}{unsigned}"


def _person(name: str, kind: str) -> Party:
    return Party(name=name, kind=Party.Kind.PERSON)


LOOKUPS: dict[str, Lookup] = {
    "things": _things("", Item.objects.all),
    "originals": _things("a copy is asked of originals and of copies", lambda: Item.objects.originals()),
    "in-hand": _things("it was destroyed or has left the museum", _not_gone),
    "models": _things("a mould is not taken from a mould or a shell",
                      lambda: Item.objects.exclude(kind__in=[Kind.MOULD, Kind.SHELL])),
    "commissions": Lookup("commission", lambda: Commission.objects.select_related("requester"),
                          about=lambda row: f"{row.requester}", entered_at="commission_add",
                          at_hand=lambda rows: rows.filter(closed_on__isnull=True).order_by("-number")),
    "commissions-of": Lookup("commission", lambda: Commission.objects.select_related("requester").order_by("-number"),
                             about=lambda row: f"{row.requester}", hint="it is about other pieces",
                             within=_of_the_piece, at_hand=lambda rows: rows),
    "originals-of": Lookup("thing", lambda: Item.objects.order_by("number"), about=lambda row: row.title,
                           hint="the commission does not name it", at_hand=lambda rows: rows,
                           within=lambda rows, number: rows.filter(commissions__number=number)),
    "reports-of": Lookup("report", lambda: ConditionReport.objects.order_by("-examined_on", "-pk"), about=_with_day,
                         hint="it is about another piece, or came after this one", at_hand=lambda rows: rows,
                         within=lambda rows, number: rows.filter(item__number=number)),
    "parties": Lookup("person or institution", Party.objects.all, "name", about=lambda row: row.function,
                      begun=lambda name, kind: Party(name=name, kind=kind), kinds=Party.Kind.choices),
    "people": Lookup("person", lambda: Party.objects.filter(kind=Party.Kind.PERSON), "name", "initials",
                     lambda row: row.initials, "only a person sees, measures and signs", _person,
                     at_hand=lambda rows: rows.exclude(initials="")),
    "places": Lookup("place", lambda: Place.objects.select_related("within"), "name",
                     about=lambda row: f"in {row.within}" if row.within else "",
                     begun=lambda name, kind: Place(name=name)),
}  # fmt: skip

# Where a form offers a choice of these, it is one by number or name: they grow without end.
USUAL: dict[type[Model], str] = {Item: "things", Commission: "commissions", Party: "parties", Place: "places"}
