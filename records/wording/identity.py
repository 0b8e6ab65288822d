"""Checks that a wording says what the piece is: kind first, then its own date, its generation, its number."""

import re
from collections.abc import Iterator

from records.wording.clauses import clauses, first_year, says
from records.wording.facts import Complaint, CopyFacts, LabelDraft, ask, refuse
from records.wording.kinds import fitting_kinds, kind_of_text

_NO_DATE = "date unknown|undated|not dated|date not known"
_SAYS_GENERATION = "(?:of|from) an? (?:earlier |older |historic )?(?:copy|electrotype|cast|reproduction)"
_GONE = "lost|untraced|missing|stolen|destroyed|burnt|melted|no longer|not (?:been )?seen|looted"
_MADE = "(?:made|moulded|cast|taken|copied|deposited) from"
_FROM_ORIGINAL = f"(?:after|copy of|electrotype of|cast of|{_MADE}) (?:the|an) original"


def _choices(piece: CopyFacts) -> str:
    return " or ".join(f"“{kind.words}”" for kind in fitting_kinds(piece)[:2]) or "a kind of copy from the list"


def first_words(draft: LabelDraft, piece: CopyFacts) -> Iterator[Complaint]:
    kind = kind_of_text(draft.heading)
    if kind is None:
        yield refuse(
            "kind.first",
            "The first words do not say what kind of copy this is; a hurried reader would take it for the "
            f"original. Begin with {_choices(piece)}.",
        )
    elif not kind.fits(piece):
        yield refuse(
            "kind.other",
            f"“{kind.words}” is not what the record says of {piece.number}. Begin with {_choices(piece)}, "
            "or correct the record.",
        )


def date_first(draft: LabelDraft, piece: CopyFacts) -> Iterator[Complaint]:
    """The copy's own date stands in the heading, before any other year."""
    if not piece.made_date:
        if not says(_NO_DATE, draft.heading):
            yield refuse(
                "date.missing",
                "The heading gives no date of the copy. Write “date unknown” after the kind, or record one.",
            )
        return
    own_year = first_year(piece.made_date) or piece.made_date
    if piece.made_date not in draft.heading and own_year not in draft.heading:
        yield refuse(
            "date.missing",
            f"The heading lacks the date of the copy, and the date of the original would be read as its own. "
            f"Write “{piece.made_date}” after the kind.",
        )
    elif first_year(own_year) and first_year(draft.text) != own_year:
        yield refuse(
            "date.order",
            f"{first_year(draft.text)} stands before {own_year}, the date of the copy. Put {own_year} first.",
        )


def generation(draft: LabelDraft, piece: CopyFacts) -> Iterator[Complaint]:
    unsure = piece.is_copy_of_copy or piece.at_least
    if piece.is_copy_of_copy and not says(_SAYS_GENERATION, draft.text):
        yield refuse(
            "generation.hidden",
            "The piece was made from another copy, and the wording does not say so. "
            "Write “copy of a copy” or “copy of an electrotype”.",
        )
    if unsure and says(_FROM_ORIGINAL, draft.text):
        yield refuse(
            "generation.after_original",
            "“After the original” would be untrue: the model was itself a copy, or its own model is unknown. "
            "Name what the mould was taken from.",
        )
    if unsure and says("first generation|(?:taken|made|moulded) directly", draft.text):
        yield refuse(
            "generation.first",
            "The record does not show that the original was moulded. Leave out “first” and “directly”.",
        )


def number(draft: LabelDraft, piece: CopyFacts) -> Iterator[Complaint]:
    written = rf"(?<![\w.]){re.escape(piece.number)}(?!\w|\.\d)"
    if draft.number != piece.number and not re.search(written, draft.text):
        yield refuse(
            "number.missing",
            f"The label does not carry the number of the copy. Add {piece.number}, so that label and piece "
            "find each other again.",
        )


def original_named(draft: LabelDraft, piece: CopyFacts) -> Iterator[Complaint]:
    names = [name for name in (piece.original_number, piece.original_owner) if name]
    if names and not any(name in draft.text for name in names):
        yield ask(
            "original.unnamed",
            f"Nobody learns where the original is. Name {' or '.join(names)}, or say why it is left out.",
        )


def original_lost(draft: LabelDraft, piece: CopyFacts) -> Iterator[Complaint]:
    """Where the original is gone, the copy is what remains of it: whoever reads the label should learn it."""
    if piece.original_lost and not says(_GONE, draft.text):
        yield ask(
            "original.lost",
            f"The record says that the original {piece.original_lost}, and the wording does not. Say it, "
            "for the copy has another meaning now.",
        )


def not_claimed(draft: LabelDraft, piece: CopyFacts) -> Iterator[Complaint]:
    """“Original” belongs to the piece that was copied, “replica” never beside it."""
    own = "original (?:electrotype|copy|cast|replica|reproduction)|(?:genuine|authentic|true) original"
    own += "|(?:this|it|which) is (?:the|an) original"
    in_heading = any(
        says("original", clause) and not says("(?:after|of|from|not) (?:the |an |a )?.*original", clause)
        for clause in clauses(draft.heading)
    )
    if in_heading or says(own, draft.text):
        yield refuse(
            "original.claimed",
            f"The wording calls {piece.number} an original. It is a copy; keep the word for what it repeats.",
        )
    for clause in clauses(draft.text):
        if says("replicas?", clause) and says("originals?", clause):
            yield refuse(
                "replica.original",
                f"“{clause}” puts “replica” and “original” side by side, and readers keep only one of them. "
                "Separate them, or say what kind of copy it is.",
            )
