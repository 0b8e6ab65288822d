"""What laws on precious metal ask: how a coating is described, and that no hallmark is carried over to the copy."""

from records.marking.answer import NOT_RECORDED, Answer
from records.marking.facts import MarkFacts, PieceFacts
from records.marking.rules import Rule


def plated_lettering(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    """“Plated”, “silvered” or “gilt” in letters at least as large as the words that it belongs to."""
    if not piece.skin:
        return Answer(True, "a coating said in letters as large as the rest", "no precious coating recorded")
    required = f"the {piece.skin} coating said in letters as large as the rest of the description"
    if piece.largest_pt is None:
        return Answer(None, required, f"label {NOT_RECORDED}")
    if piece.plated_pt is None:
        return Answer(False, required, "the label does not say it")
    found = f"said in {piece.plated_pt:.1f} pt, largest words beside it {piece.largest_pt:.1f} pt"
    return Answer(piece.plated_pt >= piece.largest_pt - 1e-9, required, found)


def coating(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    """Adding to a hallmarked article needs consent, but for a thin coating."""
    most_um = rule.limits["most_um"]
    required = f"no hallmark on the piece, or a coating of at most {most_um:.0f} µm"
    carries = False if piece.suppressed else piece.hallmarked
    if carries is None:
        return Answer(None, required, f"whether the original bears hallmarks is {NOT_RECORDED}")
    if not carries:
        return Answer(True, required, "no hallmark on the piece")
    if piece.coating_um is None:
        return Answer(
            None if piece.skin else True,
            required,
            f"thickness of the coating {NOT_RECORDED}" if piece.skin else "no coating",
        )
    return Answer(piece.coating_um <= most_um + 1e-9, required, f"hallmarked, coating {piece.coating_um:.1f} µm")


def suppressed(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    """Hallmarks of the original are masked in the mould or removed from the copy, and that is photographed."""
    required = "hallmarks masked in the mould or removed from the copy, with a photograph"
    if piece.hallmarked is None:
        return Answer(None, required, f"whether the original bears hallmarks is {NOT_RECORDED}")
    if not piece.hallmarked:
        return Answer(True, required, "the original bears none")
    if piece.suppressed is None:
        return Answer(None, required, f"what became of them is {NOT_RECORDED}")
    if not piece.suppressed:
        return Answer(False, required, "a hallmark stands on the copy")
    photo = "photographed" if piece.suppression_photographed else "no photograph"
    return Answer(piece.suppression_photographed, required, f"masked or removed, {photo}")


def exempt_weight(rule: Rule, mark: MarkFacts, piece: PieceFacts) -> Answer:
    """Light articles of precious metal need no hallmark."""
    least_g = rule.limits.get(piece.metal)
    required = f"{piece.metal} under {least_g:g} g" if least_g else "under the exempt weight of its metal"
    if least_g is None or piece.mass_g is None:
        return Answer(None, required, f"metal or mass {NOT_RECORDED}")
    return Answer(piece.mass_g < least_g, required, f"{piece.mass_g:.2f} g")
