"""A thing with everything it was made from: its descent, what was measured along it, the consents that hold for it.

A page reads this once and leaves it on the row, so that its parts need not ask the database again.
"""

from dataclasses import dataclass

from records.lineage import Descent, descent_of, links_both
from records.models import Consent, DescentLink, Item, Measurement


@dataclass(frozen=True)
class Line:
    """`down` are the steps that began with the thing: none, and nothing was made from it. `struck` were taken back."""

    descent: Descent
    down: list[DescentLink]
    measured: dict[int, list[Measurement]]
    consents: list[Consent]
    struck: list[Measurement]

    def measured_on(self, thing: Item) -> list[Measurement]:
        return self.measured.get(thing.pk, [])


def read_line(item: Item) -> Line:
    """In three queries."""
    up, down = links_both(item)
    descent = descent_of(item, up)
    keys = [item.pk, *(thing.pk for thing in descent.forebears)]
    measured: dict[int, list[Measurement]] = {}
    rows = list(Measurement.every.filter(item__in=keys).select_related("measured_by", "struck_by"))
    for row in rows:
        if not row.is_struck:
            measured.setdefault(row.item_id, []).append(row)
    consents = Consent.objects.filter(items__in=keys).with_commissions().distinct()
    struck = [row for row in rows if row.is_struck and row.item_id == item.pk]
    return Line(descent, down, measured, list(consents), struck)


def keep_line(item: Item) -> Line:
    """Read it and leave it on the row; only for a row that lives no longer than the page."""
    item._line = read_line(item)
    return item._line


def line_of(item: Item) -> Line:
    """What the page has read already, or read now."""
    return getattr(item, "_line", None) or read_line(item)


def measured_on(item: Item, *forebears: Item) -> list[Measurement]:
    """Measurements of a thing and of some that it was made from; asked for only if no page has read the line."""
    things = (item, *forebears)
    if line := getattr(item, "_line", None):
        return [row for thing in things for row in line.measured_on(thing)]
    return list(Measurement.objects.filter(item__in=things))
