"""What a borrower or new owner signs: that the piece is a copy, how it is described, and how it may be used."""

from typing import Any

from records.extensions import PaperContext
from records.identity import identity_of
from records.limits import concessions_of, limits_along
from records.lineage import descent_of
from records.models import Item
from records.pdf import blocks as b
from records.pdf.document import build
from records.portraits import best_of
from records.reports.attached import record
from records.reports.parts import caption_of, head, local_day, printed
from records.sentences import named
from records.wording import phrases

KIND = "Acknowledgement of a copy"


def make(copy: Item, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    chain, limits = descent_of(copy), limits_along(copy)
    known = identity_of(copy, chain)
    conceded = concessions_of(copy, chain)
    rows = {"copy": [copy], "wording": [copy.label], "marks": copy.marks.all(), "concessions": conceded}
    data = record(KIND, copy.number, context, rows, limits=limits)
    summary = f"{known.sentence}, is handed over as a copy and stays one wherever it goes."
    paper = head(KIND, copy.number, "Received: a copy, not an original work", summary, context, named(copy))
    told = list(dict.fromkeys(f"{limit.sentence.rstrip('.')}. ({limit.source})" for limit in limits))
    told += [f"Concession {c.number}: {c.reason.rstrip('.')}." for c in conceded if c.number not in " ".join(told)]
    return build(paper, _blocks(copy, chain, told, context), data, context.issued_at), data


def _blocks(copy: Item, chain: Any, limits: list[str], context: PaperContext) -> list[b.Block]:
    known, line, photo = identity_of(copy, chain), chain.lineage, best_of(copy.photos.all())
    marks = phrases.listed([f"“{mark.text}”, {mark.get_face_display()}" for mark in copy.marks.all()])
    facts = (
        b.Fact("Number", copy.number), b.Fact("What it is", known.heading), b.Fact("What it repeats", known.after),
        b.Fact("Materials", copy.materials), b.Fact("Marks", marks or "none recorded"),
        b.Fact("Owner", str(copy.owner or "")),
    )  # fmt: skip
    shown = printed(photo, caption_of(photo, copy)) if photo else None
    steps = phrases.generation(line.generation, line.transfer_count, line.at_least)
    terms = (
        f"1. This is a copy: {known.heading}. {steps}\n"
        f"2. Every label, list, catalogue and sale names it in these words first, and captions read: {known.caption}\n"
        "3. Its marks are not removed, covered or filled. No mould is taken of it without written permission.\n"
        "4. It is passed on only with this paper or its certificate."
    )
    return [
        b.Cover(shown, tuple(fact for fact in facts if fact.value)),
        *([b.Notice("Limits of use and concessions", "\n".join(limits))] if limits else []),
        b.Heading("What the receiver acknowledges"), b.Prose(terms),
        b.Signatures((
            b.Signer(context.issued_by, context.role.capitalize(), local_day(context.issued_at)),
            b.Signer("", "Receiver, institution"),
        )),
    ]  # fmt: skip
