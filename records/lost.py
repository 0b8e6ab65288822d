"""An original that is lost, stolen or destroyed gives its copies and moulds another meaning: they carry a flag."""

from collections.abc import Iterable
from dataclasses import dataclass

from django.db.models import Case, QuerySet, Value, When
from django.db.models.expressions import RawSQL

from records.models import DescentLink, Item

LOST = (Item.Status.LOST, Item.Status.STOLEN, Item.Status.DESTROYED)
GONE = (Item.Status.LEFT, *LOST)  # no longer here, for whatever reason
WORD = "original lost"
WHY = (
    "What was taken from it is what remains of it: ask the registrar before any of it is lent, sold, moulded again "
    "or destroyed."
)


@dataclass(frozen=True)
class Loss:
    """One original that is gone; the words begin with the flag, as every page and paper prints it."""

    original: Item

    @property
    def words(self) -> str:
        return f"Original lost: {self.original.number} is recorded as {self.original.get_status_display()}."

    @property
    def why(self) -> str:
        return WHY


def losses_among(things: Iterable[Item]) -> list[Loss]:
    """Those originals, among what a piece descends from, that are gone."""
    return [Loss(thing) for thing in things if thing.kind == Item.Kind.ORIGINAL and thing.status in LOST]


def after_lost() -> RawSQL:
    """The keys of all that descends from an original that is gone; the database walks down from those."""
    links, items = DescentLink._meta.db_table, Item._meta.db_table
    gone = ", ".join(["%s"] * len(LOST))
    walk = (
        f"WITH RECURSIVE later(thing) AS (SELECT target_id FROM {links} JOIN {items} ON {items}.id = source_id "
        f"WHERE kind = %s AND status IN ({gone}) UNION SELECT target_id FROM {links} JOIN later ON source_id = thing) "
        "SELECT thing FROM later"
    )
    return RawSQL(walk, [Item.Kind.ORIGINAL, *LOST])


def with_flags(rows: QuerySet) -> QuerySet:
    """Each row of things, or of what extends them, with `flag`: the word it carries in a list, or nothing."""
    return rows.annotate(flag=Case(When(pk__in=after_lost(), then=Value(WORD)), default=Value("")))
