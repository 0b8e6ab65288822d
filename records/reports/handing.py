"""What every paper about a copy in other hands says of it: what it is, its limits, what the receiver acknowledges."""

from typing import Any

from records.extensions import Limit
from records.identity import Identity, identity_of
from records.lineage import Descent
from records.models import Concession, Item
from records.pdf import blocks as b
from records.portraits import best_of
from records.reports.parts import caption_of, printed
from records.wording import phrases


def cover(copy: Item, known: Identity, *more: b.Fact) -> b.Cover:
    """Photograph, what it is and what it repeats, its marks."""
    photo = best_of(copy.photos.all())
    marks = phrases.listed([f"“{mark.text}”, {mark.get_face_display()}" for mark in copy.marks.all()])
    facts = (
        b.Fact("Number", copy.number), b.Fact("What it is", known.heading), b.Fact("What it repeats", known.after),
        b.Fact("Materials", copy.materials), b.Fact("Marks", marks or "none recorded"),
        b.Fact("Owner", str(copy.owner or "")), *more,
    )  # fmt: skip
    shown = printed(photo, caption_of(photo, copy)) if photo else None
    return b.Cover(shown, tuple(fact for fact in facts if fact.value))


def told(limits: list[Limit], conceded: list[Concession]) -> list[b.Block]:
    """The limits of use and concessions in one box, each once; nothing where there are none."""
    lines = list(dict.fromkeys(f"{limit.sentence.rstrip('.')}. ({limit.source})" for limit in limits))
    lines += [f"Concession {c.number}: {c.reason.rstrip('.')}." for c in conceded if c.number not in " ".join(lines)]
    return [b.Notice("Limits of use and concessions", "\n".join(lines))] if lines else []


def acknowledged(copy: Item, chain: Descent, called: str = "") -> b.Prose:
    """The terms that a receiver signs: the piece stays a copy wherever it goes."""
    line, known = chain.lineage, identity_of(copy, chain)
    steps = phrases.generation(line.generation, line.transfer_count, line.at_least)
    return b.Prose(
        f"1. This is a copy: {called or known.heading}. {steps}\n"
        f"2. Every label, list, catalogue and sale names it in these words first, and captions read: {known.caption}\n"
        "3. Its marks are not removed, covered or filled. No mould is taken of it without written permission.\n"
        "4. It is passed on only with this paper or its certificate.",
        leads=True,  # to the signatures: nobody signs an empty page
    )


def rows_of(copy: Item, conceded: Any) -> dict[str, Any]:
    """What goes into the attached record of such a paper."""
    label = getattr(copy, "label", None)
    return {
        "copy": [copy],
        "wording": [label] if label else [],
        "marks": copy.marks.all(),
        "concessions": conceded,
    }
