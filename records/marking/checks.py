"""What rules ask of a mark itself: its words, place, size and permanence, one function each."""

import re

from records.marking.answer import NOT_RECORDED, Answer
from records.marking.facts import FACES, METHODS, TECHNIQUES, MarkFacts, PieceFacts
from records.marking.rules import Rule

# A caliper shows hundredths; this only absorbs what binary fractions add.
_SLACK = 1e-9
_WHOLES = {"longest": "longest chord", "thickness": "finished thickness"}


def permanent(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    found = METHODS[mark.method][0] if mark.method in METHODS else NOT_RECORDED
    return Answer(mark.permanent, "a permanent mark", found)


def photographed(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    found = "photographed" if mark.photographed else "no photograph"
    return Answer(mark.photographed, "a photograph of the mark", found)


def permanent_photographed(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    kept, seen = permanent(rule, mark, piece), photographed(rule, mark, piece)
    passes = None if kept.passes is None else kept.passes and mark.photographed
    return Answer(passes, f"{kept.required} with a photograph", f"{kept.found}, {seen.found}")


def legible(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    found = {None: NOT_RECORDED, True: "read without a lens", False: "read through a lens only"}[mark.legible]
    return Answer(mark.legible, "letters that are read without a lens", found)


def not_edge_only(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    required = "on a face or a rim"
    if mark.on_edge:
        return Answer(False, required, "on the edge")
    return Answer(*(None, required, NOT_RECORDED) if not mark.face else (True, required, _place(mark)))


def on_face(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    required = "on the obverse or the reverse"
    if mark.on_edge:
        return Answer(False, required, "on the edge")
    if not mark.face or mark.face == "rim":
        return Answer(None, required, "on the rim, side not recorded" if mark.face else NOT_RECORDED)
    return Answer(mark.face in ("obverse", "reverse", "front", "back"), required, _place(mark))


def _place(mark: MarkFacts) -> str:
    face = f"on the {FACES.get(mark.face, mark.face)}"
    return f"{face}, {mark.position}" if mark.position and mark.position != mark.face else face


def word(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    """The exact word, in capitals, standing by itself."""
    passes = re.search(rf"\b{re.escape(rule.word)}\b", mark.text) is not None if mark.text else None
    return Answer(passes, f"the word {rule.word}", f"“{mark.text}”" if mark.text else NOT_RECORDED)


def says_copy(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    """Any of the words that say so, in any case and language of the list."""
    if not mark.text:
        return Answer(None, "a word that says copy", NOT_RECORDED)
    read = set(re.findall(r"[^\W\d_]+", mark.text.upper()))
    return Answer(not read.isdisjoint(rule.words), "a word that says copy", f"“{mark.text}”")


def sans_serif_incuse(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    technique, asked = ("incuse", "incuse") if piece.can_be_incused else ("flat", "imprinted")
    letters = {None: "serifs not recorded", True: "without serifs", False: "with serifs"}[mark.sans_serif]
    found = f"{TECHNIQUES.get(mark.technique, 'technique ' + NOT_RECORDED)}, {letters}"
    required = f"{asked}, without serifs"
    if mark.sans_serif is False or (mark.technique and mark.technique != technique):
        return Answer(False, required, found)
    return Answer(True if mark.technique and mark.sans_serif else None, required, found)


def _size(rule: Rule, found_mm: float | None, piece: PieceFacts) -> Answer:
    """At least the plain figure, or the proportion of the piece where that is smaller."""
    share_mm = piece.share_mm(rule.or_share_of, rule.share) if rule.or_share_of else None
    by_share = share_mm is not None and share_mm < rule.at_least_mm
    least_mm = share_mm if by_share and share_mm is not None else rule.at_least_mm
    required = f"at least {least_mm:.2f} mm"
    if by_share:
        required += f" ({rule.share} of the {_WHOLES[rule.or_share_of]})"
    if found_mm is None:
        return Answer(None, required, NOT_RECORDED, by_share)
    found = f"{found_mm:.2f} mm"
    if found_mm >= least_mm - _SLACK:
        return Answer(True, required, found, by_share)
    if rule.or_share_of and share_mm is None:
        # On a small piece the proportion might still let it pass.
        return Answer(
            None,
            f"{required}, or {rule.share} of the {_WHOLES[rule.or_share_of]}, which is {NOT_RECORDED}",
            found,
        )
    return Answer(False, required, found, by_share)


def height(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    return _size(rule, mark.height_mm, piece)


def width(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    return _size(rule, mark.width_mm, piece)


def depth(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    return _size(rule, mark.depth_mm, piece)
