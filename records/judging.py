"""The marks of a copy held against the recorded rules: rows to facts of the pure kit `records.marking`."""

import re
from collections.abc import Iterable

from records import marking
from records.extensions import CopyTraits
from records.labelling import traits_of
from records.line import measured_on
from records.marking import MarkFacts, PieceFacts, Verdict
from records.models import Item, Mark, Measurement

What = Measurement.What
CLASSES = ("coin", "token", "medal", "paper money")
ACROSS = (What.DIAMETER, What.BREADTH, What.HEIGHT)


def mark_facts(mark: Mark) -> MarkFacts:
    return MarkFacts(
        text=mark.text, face=mark.face, position=mark.position, method=mark.method, technique=mark.technique,
        height_mm=mark.letter_height_mm, width_mm=mark.copy_word_width_mm, depth_mm=mark.depth_mm,
        sans_serif=mark.is_sans_serif, legible=mark.is_legible, photographed=mark.photo_id is not None,
    )  # fmt: skip


def piece_facts(item: Item, models: Iterable[Item] = (), traits: CopyTraits | None = None) -> PieceFacts:
    """Class and size of a piece; what was not measured on it yet is taken from what it repeats."""
    things = [item, *models]
    traits = traits_of(item) if traits is None else traits
    rows = [row for row in measured_on(item, *things[1:]) if row.length_mm is not None]
    own = [row for row in rows if row.item_id == item.pk]
    words = next((thing.object_type for thing in things if thing.object_type), "")
    return PieceFacts(
        object_class=class_of(words),
        longest_mm=_longest(own) or traits.longest_mm or _longest(rows),
        thickness_mm=_first(own, What.THICKNESS) or traits.thickness_mm,
    )


def class_of(words: str) -> str:
    """The class of the rules that an object's type names; other words stand for themselves.

    >>> class_of("medal, portrait medal"), class_of("life mask"), class_of("")
    ('medal', 'life mask', '')
    """
    for name in CLASSES:
        if re.search(rf"\b{name}s?\b", words, re.IGNORECASE):
            return name
    return words.strip().lower()


def _longest(rows: Iterable[Measurement]) -> float | None:
    return max((row.length_mm for row in rows if row.what in ACROSS), default=None)


def _first(rows: Iterable[Measurement], what: str) -> float | None:
    return next((row.length_mm for row in rows if row.what == what), None)


def verdicts_of(mark: Mark, piece: PieceFacts) -> list[Verdict]:
    """What each rule says of a mark that says copy; other marks are not asked."""
    return marking.judge(mark_facts(mark), piece) if mark.purpose == Mark.Purpose.COPY else []
