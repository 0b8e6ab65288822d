"""The line of descent of a thing as its page shows it: rows of the register handed to the pure kit `records.descent`.

Keys are the things' numbers, so that a refusal can name them. The database walks the chain itself, in one query.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Any

from django.core.exceptions import ValidationError
from django.db.models import Q, QuerySet
from django.db.models.expressions import RawSQL

from records import descent
from records.descent import DescentError, Lineage, Link, Span
from records.models import DescentLink, Item

# The register's words for a transfer and the kit's differ in one.
_KIT_WORDS = {DescentLink.Transfer.DEPOSIT.value: "deposit_in_mould"}
# What must have been done to a thing whose making nobody recorded; an original needs nothing.
_PRESUMED = {
    Item.Kind.HISTORIC_COPY: "unknown", Item.Kind.CAST: "unknown", Item.Kind.COPY: "unknown",
    Item.Kind.MOULD: "moulding", Item.Kind.MATRIX: "moulding", Item.Kind.CORE: "casting",
    Item.Kind.SHELL: "deposit_in_mould",
}  # fmt: skip
_POSITIVES = {Item.Kind.ORIGINAL, Item.Kind.HISTORIC_COPY, Item.Kind.CAST, Item.Kind.COPY}
_POLARITY = {1: "positive", -1: "negative", None: ""}


@dataclass(frozen=True)
class Descent:
    """Where a thing stands in its chain: the lineage, its words, the columns of the strip, and the things in it."""

    item: Item
    lineage: Lineage
    columns: list[dict[str, Any]]
    things: dict[str, Item]
    made_on: Any = None
    rows: list[DescentLink] = field(default_factory=list)

    @property
    def words(self) -> str:
        return descent.words(self.lineage)

    @property
    def model(self) -> Item | None:
        """The positive that it was taken from: the original, or the copy that became a model."""
        before = [self.things[key] for key in self.lineage.path[:-1] if key in self.things]
        return next((thing for thing in reversed(before) if thing.kind in _POSITIVES), None)

    @property
    def forebears(self) -> list[Item]:
        """Everything it was made from; limits and consents of these hold for it too."""
        return [thing for key, thing in self.things.items() if key != self.item.number]


def _walk(start: str, end: str, beginnings: int = 1) -> str:
    table = DescentLink._meta.db_table
    first = " UNION ".join(["SELECT CAST(%s AS bigint)"] * beginnings)
    return (
        f"WITH RECURSIVE chain(thing) AS (SELECT * FROM ({first}) AS first UNION SELECT {end} FROM {table} "
        f"JOIN chain ON {start} = thing WHERE {end} IS NOT NULL) SELECT thing FROM chain"
    )


def walk_up_from(column: str) -> str:
    """The walk for each row of a larger question, whose column this is."""
    return _walk("target_id", "source_id").replace("CAST(%s AS bigint)", column)


def _steps() -> QuerySet[DescentLink]:
    return DescentLink.objects.select_related("source", "target")


def _leads_here(*items: Item) -> Q:
    return Q(target_id__in=RawSQL(_walk("target_id", "source_id", len(items)), [item.pk for item in items]))


def _begins_here(*items: Item) -> Q:
    return Q(source_id__in=RawSQL(_walk("source_id", "target_id", len(items)), [item.pk for item in items]))


def links_up(*items: Item) -> list[DescentLink]:
    """Every recorded step that led to one of the things, near or far; one query."""
    return list(_steps().filter(_leads_here(*items)))


def links_down(*items: Item) -> list[DescentLink]:
    """Every recorded step that began with one of the things, near or far; one query."""
    return list(_steps().filter(_begins_here(*items)))


def links_both(item: Item) -> tuple[list[DescentLink], list[DescentLink]]:
    """The steps that led here and those that began here, in a single query."""
    rows = list(_steps().filter(_leads_here(item) | _begins_here(item)))
    up = _up_from(item, rows)
    return up, [row for row in rows if row not in up]


def forebears_of(item: Item) -> RawSQL:
    """The keys of a thing and of all that it was made from, for a question that the database answers by itself."""
    return RawSQL(_walk("target_id", "source_id"), [item.pk])


def link_of(row: DescentLink) -> Link:
    source = row.source.number if row.source else None
    return Link(source, row.target.number, _KIT_WORDS.get(row.transfer, row.transfer), row.side)


def links_of(rows: Iterable[DescentLink], things: Iterable[Item]) -> list[Link]:
    """The kit's links; a thing that is no original and has no recorded making gets an unknown beginning."""
    links = [link_of(row) for row in rows]
    begun = {link.target for link in links}
    return links + [
        Link(None, thing.number, _PRESUMED[thing.kind])
        for thing in things
        if thing.kind in _PRESUMED and thing.number not in begun
    ]


def things_of(rows: Iterable[DescentLink], *more: Item) -> dict[str, Item]:
    named = [thing for row in rows for thing in (row.source, row.target) if thing]
    return {thing.number: thing for thing in (*named, *more)}


def descent_of(item: Item, rows: list[DescentLink] | None = None) -> Descent:
    """The lineage and the strip of one thing; one query at any depth, none if its steps are handed in."""
    rows = links_up(item) if rows is None else rows
    things = things_of(rows, item)
    links = links_of(rows, things.values())
    strip = descent.strip(links, item.number)
    own = [row.happened_on for row in rows if row.target_id == item.pk and row.happened_on]
    columns = _columns(strip, things, rows, item)
    return Descent(item, strip.lineages[item.number], columns, things, max(own, default=None), rows)


def descents_of(*items: Item) -> list[Descent]:
    """Of several things; one query."""
    rows = links_up(*items)
    return [descent_of(item, _up_from(item, rows)) for item in items]


def _up_from(item: Item, rows: list[DescentLink]) -> list[DescentLink]:
    """The steps among these that led to the thing."""
    up: list[DescentLink] = []
    reached = {item.pk}
    while found := [row for row in rows if row.target_id in reached and row not in up]:
        up += found
        reached |= {row.source_id for row in found if row.source_id}
    return sorted(up, key=lambda row: row.pk)


def _columns(strip: descent.Strip, things: dict[str, Item], rows: list[DescentLink], here: Item) -> list[dict]:
    """Columns as components/_descent_strip.html sets them."""
    unknown = iter([row.source_words for row in rows if row.source is None])
    found = []
    for index, keys in enumerate(strip.columns):
        via = dict.fromkeys(edge.words for edge in strip.between(index))
        nodes = [_node(key, strip, things, here) if key else _unknown(next(unknown, "")) for key in keys]
        found.append({"via": " / ".join(via), "nodes": nodes})
    return found


def _node(key: str, strip: descent.Strip, things: dict[str, Item], here: Item) -> dict[str, Any]:
    thing = things[key]
    return {
        "number": thing.number, "title": thing.title, "kind": thing.get_kind_display(), "url": thing.get_absolute_url(),
        "polarity": _POLARITY[strip.lineages[key].polarity], "here": thing.pk == here.pk,
    }  # fmt: skip


def _unknown(words: str) -> dict[str, Any]:
    return {"unknown": True, "title": words or "not known"}


@dataclass(frozen=True)
class Offspring:
    """One thing made from another, so many steps down."""

    thing: Item
    depth: int
    words: str
    side: str
    repeated: bool


def made_from(item: Item, rows: list[DescentLink] | None = None) -> list[Offspring]:
    """All that came of a thing, nearest first, each beneath what it was made from."""
    rows = links_down(item) if rows is None else rows
    things = things_of(rows, item)
    tree = descent.tree([link_of(row) for row in rows], item.number)
    return [Offspring(things[row.key], row.depth, row.words, row.side, row.repeated) for row in tree[1:]]


def refuse_impossible(link: DescentLink) -> None:
    """Refuse a step that closes a ring or makes a copy older than its model; nothing is stored by this."""
    before = links_up(link.source) if link.source else []
    rows = [row for row in (*before, *links_up(link.target), *links_down(link.target)) if row.pk != link.pk]
    _refuse([*rows, link], things_of(rows, link.target, *([link.source] if link.source else [])))


def refuse_impossible_date(item: Item) -> None:
    """Refuse a date of a thing, as it is about to be stored, that its line of descent contradicts."""
    up, down = links_both(item)
    rows = [*up, *down]
    for row in rows:  # the row as it will be, not as it stands
        if row.source_id == item.pk:
            row.source = item
        if row.target_id == item.pk:
            row.target = item
    if rows:
        _refuse(rows, things_of(rows, item))


def _refuse(rows: list[DescentLink], things: dict[str, Item]) -> None:
    made = {number: _span(thing, rows) for number, thing in things.items()}
    try:
        descent.refuse_impossible([link_of(row) for row in rows], made)
    except DescentError as error:
        raise ValidationError(str(error)) from error


def _span(thing: Item, rows: Iterable[DescentLink]) -> Span:
    """When a thing was made: by its own date, or by the days of the steps that made it."""
    if thing.date_earliest or thing.date_latest:
        return Span(thing.date_earliest, thing.date_latest)
    days = [row.happened_on for row in rows if row.target_id == thing.pk and row.happened_on]
    return Span(min(days), max(days)) if days else Span()
