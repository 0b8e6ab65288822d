"""The one sentence that says what a thing is and where it stands; and the conditions of a consent in words."""

import re
from collections.abc import Collection

from records.lineage import Descent
from records.lost import GONE
from records.models import Item, Mark

_SAYS_COPY = re.compile(r"\b(?:cop(?:y|ies)|electrotypes?|casts?|shells?|core|matrix)\b", re.IGNORECASE)
WORKSHOP_KINDS = {Item.Kind.MOULD, Item.Kind.CORE, Item.Kind.SHELL, Item.Kind.MATRIX}


# How a thing is called wherever its number stands; an original carries no such word, a mould cannot be taken for one.
WORDS = {
    Item.Kind.COPY: "copy", Item.Kind.HISTORIC_COPY: "historic copy", Item.Kind.CAST: "copy (cast)",
    Item.Kind.MATRIX: "copy (matrix)", Item.Kind.SHELL: "part of a copy", Item.Kind.CORE: "part of a copy",
}  # fmt: skip


def named(item: Item, paper_number: str = "") -> str:
    """“copy R.2026.1”, or “CR-2026-09, copy R.2026.1” where the paper has a number of its own."""
    word = WORDS.get(item.kind, "")
    return ", ".join(filter(None, [paper_number, f"{word} {item.number}" if word else ""]))


def title_of(item: Item) -> str:
    """The title as a paper prints it; where that of a copy reads like the original's, the word goes before it."""
    word = WORDS.get(item.kind, "")
    return f"{word.capitalize()}: {item.title}" if word and not _SAYS_COPY.search(item.title) else item.title


def sentence_of(item: Item, chain: Descent, marks: Collection[Mark]) -> str:
    """“Electrotype copy, 2026, first generation, of OVM.1931.0044; marked, accepted, in Case 4.”"""
    what = [
        kind_words(item, chain),
        date_words(item, chain),
        *_maker(item),
        *_generation(item, chain),
        *_of(item, chain),
    ]
    stands = [*_original(item), *_marking(item, marks), *_acceptance(item), *_holding(item), *_place(item)]
    first, second = (", ".join(filter(None, words)) for words in (what, stands))
    return f"{first}; {second}." if second else f"{first}."


def kind_words(item: Item, chain: Descent) -> str:
    """What kind of thing this is; for a copy the approved words of its label, never “original”."""
    label = getattr(item, "label", None) if item.is_copy else None
    if label and label.is_signed:
        return label.kind_of_copy
    if item.made_here:
        return "Electrotype matrix" if chain.lineage.polarity == -1 else "Electrotype copy"
    if item.kind == Item.Kind.ORIGINAL:
        narrowest = item.object_type.split(",")[-1].strip()
        return narrowest[:1].upper() + narrowest[1:] if narrowest else "Original"
    return item.get_kind_display().capitalize()


def date_words(item: Item, chain: Descent) -> str:
    """The thing's own date, or when it was made here; a missing date is said."""
    if item.date_words:
        return item.date_words
    if chain.made_on:
        return str(chain.made_on.year)
    return "" if item.kind in WORKSHOP_KINDS else "undated"


def _maker(item: Item) -> list[str]:
    return [_by(item)] if item.maker and not item.is_copy else []


def _by(item: Item) -> str:
    """“by Wouter Brandt”; where the register says that nobody knows, so does the sentence."""
    return f"maker {item.maker}" if item.maker.casefold() in {"not known", "unknown"} else f"by {item.maker}"


def _original(item: Item) -> list[str]:
    return ["original"] if item.kind == Item.Kind.ORIGINAL and item.object_type else []


def _generation(item: Item, chain: Descent) -> list[str]:
    if item.kind in {Item.Kind.ORIGINAL, Item.Kind.MOULD, Item.Kind.CORE}:
        return []
    return [chain.words.replace("; ", " (", 1) + (")" if "; " in chain.words else "")]


def _of(item: Item, chain: Descent) -> list[str]:
    if chain.model is None:
        return _behind(chain) if item.is_copy else []
    side = next((row.get_transfer_display() and row.side for row in chain.rows if row.target_id == item.pk), "")
    if item.kind in WORKSHOP_KINDS:
        return [f"of {chain.model.number}" + (f" ({side})" if side else "")]
    return [f"of {chain.model.number}{_told_of(chain.model)}", *_behind(chain)]


def _told_of(original: Item) -> str:
    """“ (by Wouter Brandt, 1624)”: whose work it is that a copy repeats; nothing beside the number of another copy."""
    known = [_by(original) if original.maker else "", original.date_words]
    told = ", ".join(filter(None, known))
    return f" ({told})" if told and not original.is_copy else ""


def _behind(chain: Descent) -> list[str]:
    """The original behind a copy that served as the model."""
    if chain.model and not chain.model.is_copy:
        return []
    root = next((thing for thing in chain.forebears if thing.kind == Item.Kind.ORIGINAL), None)
    if root:
        return [f"after the original {root.number}{_told_of(root)}"]
    return [f"after {row.source_words}" for row in chain.rows if row.source_id is None and row.source_words][:1]


def _marking(item: Item, marks: Collection[Mark]) -> list[str]:
    """Only what is made here must be marked; a historic copy is flagged instead."""
    if not item.made_here:
        return []
    if any(mark.is_photographed_copy_mark for mark in marks):
        return ["marked"]
    return ["marked, the mark not photographed" if any(m.purpose == m.Purpose.COPY for m in marks) else "unmarked"]


def _acceptance(item: Item) -> list[str]:
    """Only a signed inspection takes a copy out of the workshop; one kept as evidence was not accepted."""
    if not item.made_here or item.status in GONE:
        return []
    return ["not accepted yet"] if item.status == Item.Status.WORKSHOP else _unless_evidence(item)


def _unless_evidence(item: Item) -> list[str]:
    return [] if item.status == Item.Status.EVIDENCE else ["accepted"]


def _holding(item: Item) -> list[str]:
    """How it is held, unless that goes without saying."""
    if item.status == Item.Status.LOAN_IN and item.owner:
        return [f"on loan to us from {item.owner}"]
    return [] if item.status in {Item.Status.ACCESSIONED, Item.Status.WORKSHOP} else [item.get_status_display()]


def _place(item: Item) -> list[str]:
    if item.place is None or item.status in GONE:
        return []
    return [f"in {item.place.name}"]
