"""Every question that a rule may ask, by the name that rule files and the museum's own rules use."""

from records.marking import checks, coin_checks, hallmark_checks
from records.marking.answer import Check

# name -> (the question, how the choice is worded where a museum writes a rule of its own; "" is not offered there)
_QUESTIONS: tuple[tuple[Check, str], ...] = (
    (checks.permanent, "The mark is permanent"),
    (checks.photographed, "The mark is photographed"),
    (checks.permanent_photographed, "The mark is permanent and photographed"),
    (checks.legible, "The mark is read without a lens"),
    (checks.not_edge_only, "The mark stands on a face or a rim, not on the edge"),
    (checks.on_face, "The mark stands on the obverse or the reverse"),
    (checks.word, "The mark has this word, exactly so"),
    (checks.says_copy, "The mark has one of these words, in any case"),
    (checks.sans_serif_incuse, "Letters are incuse and without serifs"),
    (checks.height, "Letters are at least so high"),
    (checks.width, "The word is at least so wide"),
    (checks.depth, "Letters are at least so deep"),
    (coin_checks.euro_words, ""),
    (coin_checks.euro_band, ""),
    (coin_checks.euro_near, ""),
    (coin_checks.euro_metal, ""),
    (coin_checks.euro_exception, ""),
    (coin_checks.imitation_or_old, ""),
    (coin_checks.not_current, "The original is not money any more"),
    (coin_checks.resembles_coin, ""),
    (hallmark_checks.plated_lettering, ""),
    (hallmark_checks.coating, ""),
    (hallmark_checks.suppressed, "Hallmarks of the original are masked or removed, with photograph"),
    (hallmark_checks.exempt_weight, ""),
)

CHECKS: dict[str, Check] = {check.__name__: check for check, _ in _QUESTIONS}
# Rules on money and hallmarks look at the piece; the others at the mark on it.
ABOUT_THE_PIECE = {check.__name__ for check, _ in _QUESTIONS if check.__module__ != checks.__name__}
OFFERED: dict[str, str] = {check.__name__: words for check, words in _QUESTIONS if words}
