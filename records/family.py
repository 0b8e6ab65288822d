"""All that came from one original: how many copies there are, where they are, and where the moulds are.

The family of a piece begins with the oldest things that it is known to descend from. Three queries at any size.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from django.db.models import Exists, OuterRef

from records import descent, extensions
from records.descent import Caption, Drawing, Lineage
from records.extensions import FamilyNote
from records.lineage import links_down, links_of, links_up, things_of
from records.lost import GONE, LOST, Loss, losses_among
from records.models import DescentLink, Item, Mark

NEGATIVES = (Item.Kind.MOULD, Item.Kind.MATRIX)


@dataclass(frozen=True)
class Member:
    """One thing of a family as the register's question needs it."""

    item: Item
    lineage: Lineage
    note: FamilyNote

    @property
    def words(self) -> str:
        return descent.words(self.lineage)

    @property
    def where(self) -> str:
        """Its place; where it has none, how it is held or what became of it."""
        if self.item.status in GONE:
            return self.item.get_status_display()
        return str(self.item.place) if self.item.place else f"{self.item.get_status_display()}, place not recorded"

    @property
    def told_where(self) -> str:
        """The same with its fate, if one is told: “destroyed 17 April 2026”, “in store; Store 2”."""
        if not self.note.fate:
            return self.where
        fate = self.note.fate[:1].upper() + self.note.fate[1:]
        return fate if self.is_gone else f"{fate}; {self.where}"

    @property
    def fate(self) -> str:
        """What became of a piece that is gone."""
        if not self.is_gone:
            return ""
        return self.note.fate or self.item.get_status_display()

    @property
    def is_gone(self) -> bool:
        return self.item.status in LOST or self.note.is_gone


@dataclass(frozen=True)
class Family:
    item: Item
    roots: list[Member]
    copies: list[Member]
    moulds: list[Member]
    members: dict[str, Member]
    drawing: Drawing
    unknown: str = ""

    @property
    def sentence(self) -> str:
        """The register's answer in one sentence."""
        return f"{_held(self.copies, 'copy', 'copies')}; {_held(self.moulds, 'mould', 'moulds').lower()}."

    @property
    def tree_words(self) -> str:
        roots = " and ".join(root.item.number for root in self.roots)
        return f"Line of descent from {roots}; each piece beneath what it was made from"

    @property
    def losses(self) -> list[Loss]:
        """Originals that are gone: what repeats them has another meaning now."""
        return losses_among(root.item for root in self.roots)


def _held(members: list[Member], one: str, many: str) -> str:
    """“2 copies are recorded, of which 1 is gone”."""
    gone = sum(member.is_gone for member in members)
    if not members:
        return f"No {one} is recorded"
    head = f"1 {one} is recorded" if len(members) == 1 else f"{len(members)} {many} are recorded"
    if not gone:
        return head
    if gone == len(members):
        return f"{head}, and {'is' if gone == 1 else 'all are'} lost or destroyed"
    return f"{head}, of which {gone} {'is' if gone == 1 else 'are'} lost or destroyed"


def family_of(item: Item) -> Family:
    up = links_up(item)
    roots = _roots(item, up)
    rows = {row.pk: row for row in (*up, *links_down(*roots))}.values()
    things = things_of(rows, *roots)
    full = _with_places(things)
    unknown = "; ".join(row.source_words for row in rows if row.source_id is None and row.source_words)
    links = links_of(rows, full.values())
    lineages = descent.trace_all(links)
    notes = _notes(full.values())
    members = {
        number: Member(thing, lineages.get(number, Lineage(path=(number,))), notes.get(thing.pk, FamilyNote()))
        for number, thing in full.items()
    }
    return Family(
        item,
        [members[root.number] for root in roots],
        _by_number(members.values(), (Item.Kind.COPY, Item.Kind.HISTORIC_COPY)),
        _by_number(members.values(), NEGATIVES),
        members,
        _drawing(item, roots, members, links, unknown),
        unknown,
    )


def _roots(item: Item, up: list[DescentLink]) -> list[Item]:
    """The oldest things recorded, each once; the thing itself if nothing stands before it."""
    made = {row.target_id for row in up if row.source_id}
    named = {end.pk: end for row in up for end in (row.source, row.target) if end}
    return sorted((t for t in named.values() if t.pk not in made), key=lambda t: t.number) or [item]


def _with_places(things: dict[str, Item]) -> dict[str, Item]:
    marked = Exists(Mark.objects.filter(item=OuterRef("pk")))
    rows = Item.objects.filter(pk__in=[thing.pk for thing in things.values()])
    return {thing.number: thing for thing in rows.select_related("owner", "place").annotate(is_marked=marked)}


def _notes(things: Iterable[Item]) -> dict[int, FamilyNote]:
    things = list(things)
    return {key: note for source in extensions.family_notes for key, note in source(things).items()}


def edition_of(copy: Item) -> str:
    """“copy 1 of 3 authorised, 2 made”; nothing of a copy whose making is not recorded."""
    note = _notes([copy]).get(copy.pk)
    return note.uses if note else ""


def _by_number(members: Iterable[Member], kinds: tuple[str, ...]) -> list[Member]:
    return sorted((m for m in members if m.item.kind in kinds), key=lambda member: member.item.number)


def _drawing(
    item: Item, roots: list[Item], members: dict[str, Member], links: list[descent.Link], unknown: str
) -> Drawing:
    captions = {number: _caption(member, item) for number, member in members.items()}
    captions[None] = Caption("?", descent.shortened(unknown or "not known"))
    return descent.lay_out(descent.tree(links, *(root.number for root in roots)), captions)


def _caption(member: Member, here: Item) -> Caption:
    thing = member.item
    kind = thing.get_kind_display()
    said = [kind if kind not in thing.title.lower() else "", member.fate, thing.title]
    return Caption(
        thing.number, descent.shortened(", ".join(filter(None, said))), member.lineage.polarity,
        thing.get_absolute_url(), thing.pk == here.pk, member.is_gone,
    )  # fmt: skip
