"""A good label from the record, for the curator to improve."""

import textwrap

from records.wording.facts import CopyFacts, LabelDraft
from records.wording.kinds import fitting_kinds
from records.wording.lengths import LINE_MOST


def _sentence(text: str) -> str:
    text = text.strip().rstrip(".")
    return f"{text[:1].upper()}{text[1:]}." if text else ""


def heading(piece: CopyFacts) -> str:
    """Kind of copy and its date, as every paper of the piece begins."""
    fitting = fitting_kinds(piece)
    kind = fitting[0].words if fitting else "Copy"
    touch = " — please touch" if piece.may_be_touched else ""
    return f"{kind}, {piece.made_date or 'date unknown'}{touch}"


def _after(piece: CopyFacts) -> str:
    """What it repeats; a copy of a copy names its model, and the lost original only as lost."""
    dated = ", ".join(part for part in (piece.subject, piece.original_date) if part) if piece.subject else ""
    if piece.is_copy_of_copy:
        made_from = f"made from {piece.model or 'an earlier copy'}"
        return f"{made_from}; both repeat {dated}" if dated else made_from
    if piece.at_least:
        steps = "the number of steps from the original is not known"
        return f"of {dated}; {steps}" if dated else steps
    return f"after {dated}" if dated else ""


def _materials(piece: CopyFacts) -> str:
    mark = f"marked {piece.mark_text}" if piece.mark_text else ""
    return ", ".join(part for part in (piece.materials, mark) if part)


def _weights(piece: CopyFacts) -> str:
    if not piece.may_be_touched or piece.mass_g is None or piece.original_mass_g is None:
        return ""
    return f"It weighs {piece.mass_g:.0f} g, the piece it repeats {piece.original_mass_g:.0f} g"


def _original(piece: CopyFacts) -> str:
    if piece.original_lost:
        return f"the original {piece.original_lost}"
    name = ", ".join(part for part in (piece.original_owner, piece.original_number) if part)
    place = f", {piece.original_place}" if piece.original_place else ""
    return f"original: {name}{place}" if name else ""


def compose(piece: CopyFacts) -> LabelDraft:
    """A draft that passes the checks, broken into lines that can be read.

    >>> piece = CopyFacts("R.2026.4", "2026", subject="a medal", original_date="1624", materials="copper")
    >>> print(compose(piece).text)
    Electrotype copy, 2026
    after a medal, 1624
    Copper.
    """
    after = _after(piece)
    first = after if after.startswith(("after", "of ")) and "; " not in after else _sentence(after)
    sentences = [first, *map(_sentence, (_materials(piece), _weights(piece), _original(piece)))]
    lines = [line for text in sentences if text for line in textwrap.wrap(text, LINE_MOST)]
    return LabelDraft(heading(piece), "\n".join(lines), piece.number)
