"""Hallmarks and makers' marks that a copy could carry on: which there are along its line, and which are still open."""

from collections.abc import Iterator

from records.lineage import descent_of
from records.models import Item, Mark, SuppressedMark

FORESEEN = (Mark.Purpose.HALLMARK, Mark.Purpose.MAKER)


def foreseen_marks(copy: Item) -> list[Mark]:
    """Along everything that the copy was made from."""
    things = [thing.pk for thing in descent_of(copy).forebears]
    return list(Mark.objects.filter(item__in=things, purpose__in=FORESEEN).select_related("item"))


def marks_left_open(copy: Item, marks: list[Mark]) -> list[str]:
    """One sentence for each mark that may still be taken for the original's own."""
    told = {row.mark_id: row for row in copy.suppressed_marks.all()}
    return [sentence for mark in marks for sentence in _open(mark, told.get(mark.pk))]


def _open(mark: Mark, row: SuppressedMark | None) -> Iterator[str]:
    named = f"“{mark.text}” ({mark.get_purpose_display()} on {mark.item.number})"
    if row is None:
        yield f"What became of {named} is not recorded: mask it in the mould or remove it, and photograph the place."
    elif row.how == SuppressedMark.How.LEFT and mark.purpose == Mark.Purpose.HALLMARK:
        yield f"{named} was left on the copy: a hallmark is removed."
    elif row.how != SuppressedMark.How.LEFT and row.photo_id is None:
        yield f"{named} was {row.get_how_display()}, and no photograph shows the place."
