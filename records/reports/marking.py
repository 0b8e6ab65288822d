"""Whether a copy may be named and tagged: its permanent mark, or the concession that stands for it."""

from django.db.models import Prefetch, prefetch_related_objects

from records import clock, gates
from records.models import Concession, Gate, Item


def marking_gap(copy: Item) -> str:
    """What is missing, in a sentence; empty when the copy is marked, a concession lets it pass, or it is not ours.

    Remembered on the row, for a page asks it for each of its papers.
    """
    if not copy.made_here:
        return ""
    if not hasattr(copy, "_marking_gap"):
        if is_unmarked(copy):
            prefetch_related_objects([copy], Prefetch("concessions", Concession.objects.select_related("given_by")))
        found = gates.checks(Gate.MARK, gates.Subject(copy, copy.number, (copy,)), clock.today())
        copy._marking_gap = " ".join(check.sentence for check in found if not check.met)
    return copy._marking_gap


def is_unmarked(copy: Item) -> bool:
    """A copy made here without its mark, whatever a concession says of it."""
    return copy.made_here and not any(mark.is_photographed_copy_mark for mark in copy.marks.all())
