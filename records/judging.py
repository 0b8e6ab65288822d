"""The marks of a copy held against the recorded rules: rows to facts of the pure kit `records.marking`."""

import re
from collections.abc import Iterable, Sequence
from typing import Any

from records import marking
from records.extensions import CopyTraits
from records.labelling import traits_of
from records.line import measured_on
from records.marking import MarkFacts, PieceFacts, Rule, Verdict
from records.models import Item, Mark, Measurement, SuppressedMark
from records.own_rules import all_rules, gate_rules
from records.wording.reading import reading_size
from records.wording.surface import says_coating

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
    thickness_mm = _first(own, What.THICKNESS) or traits.thickness_mm
    return PieceFacts(
        object_class=class_of(words),
        longest_mm=_longest(own) or traits.longest_mm or _longest(rows),
        thickness_mm=thickness_mm,
        edge_mm=thickness_mm,
        one_sided=traits.one_sided,
        **(_skin(item, traits) | _metal(item) | _of_the_original(item, things[-1]) | _asked_by_rules(item)),
    )


def _skin(item: Item, traits: CopyTraits) -> dict[str, Any]:
    """A precious skin, and how its label says it: the words of one sentence of our labels have one size."""
    if traits.skin not in ("silver", "gold"):
        return {}
    label = getattr(item, "label", None)
    found: dict[str, Any] = {"skin": traits.skin, "coating_um": traits.coating_um}
    if label is None:
        return found
    size_pt = reading_size(label.distance_mm / 1000, label.light)
    said = says_coating(traits.skin, " ".join([label.heading, label.after, label.body]))
    return found | {"largest_pt": size_pt, "plated_pt": size_pt if said else None}


def _metal(item: Item) -> dict[str, Any]:
    """Electrotypes are copper unless their materials say otherwise; pure copper is quoted at about 100 % IACS."""
    found = re.search(r"copper|gold|silver|platinum", re.sub(r"silvered|gilt", "", item.materials.lower()))
    if not (item.is_copy and found):
        return {}
    metal = "copper" if "copper" in item.materials.lower() else found.group()
    return {"metal": metal, "conductivity_pct": 100.0 if metal == "copper" else None}


def _asked_by_rules(item: Item) -> dict[str, Any]:
    """What was written down for the rules alone; what was not stays unknown."""
    row = getattr(item, "rule_facts", None)
    names = ("coating_um", "fineness_permille", "moment_uvs_cm", "hole_mm", "corner_count")
    found = {name: getattr(row, name) for name in names} if row else {}
    nothing = {name for name in ("coating_um", "hole_mm") if found.get(name) == 0}  # none is there, and none is wide
    return {name: value for name, value in found.items() if value is not None and name not in nothing}


def _of_the_original(item: Item, model: Item) -> dict[str, Any]:
    year = model.date_earliest.year if model.date_earliest and model.pk != item.pk else None
    facts: dict[str, Any] = {
        "inscription": " ".join(filter(None, [item.inscriptions, model.inscriptions])),
        "original_year": year,
        "is_current": {"no": False, "current": True}.get(model.money),
        "hallmarked": {"none": False, "present": True}.get(model.hallmarks),
    }
    return facts | (_suppression(item, model) if facts["hallmarked"] else {})


def _suppression(copy: Item, model: Item) -> dict[str, Any]:
    """Whether every hallmark of the original was kept off the copy; unknown while one is not spoken of."""
    hallmarks = set(model.marks.filter(purpose=Mark.Purpose.HALLMARK).values_list("pk", flat=True))
    rows = [row for row in copy.suppressed_marks.all() if row.mark_id in hallmarks]
    if any(row.how == SuppressedMark.How.LEFT for row in rows):
        return {"suppressed": False}
    if not hallmarks or {row.mark_id for row in rows} != hallmarks:
        return {"suppressed": None}
    return {"suppressed": True, "suppression_photographed": all(row.photo_id for row in rows)}


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


def verdicts_of(mark: Mark, piece: PieceFacts, rules: Sequence[Rule] | None = None) -> list[Verdict]:
    """What each rule says of a mark that says copy; other marks are not asked."""
    if mark.purpose != Mark.Purpose.COPY:
        return []
    return marking.judge(mark_facts(mark), piece, all_rules() if rules is None else rules)


def closing_verdicts(copy: Item, marks: Iterable[Mark]) -> tuple[Mark | None, list[Verdict]]:
    """The best mark of a copy, and those rules of the gate that it does not pass; no rule is left out."""
    rules = gate_rules()
    sized = any(rule.at_least_mm for rule in rules)
    piece = piece_facts(copy) if sized else PieceFacts(object_class=class_of(copy.object_type))
    judged = [(mark, [v for v in verdicts_of(mark, piece, rules) if not v.passes]) for mark in marks]
    asked = [pair for pair in judged if pair[0].purpose == Mark.Purpose.COPY]
    return min(asked, key=lambda pair: len(pair[1]), default=(None, []))
