"""All checks of a wording together."""

from records.wording import identity, lengths, second, surface
from records.wording.facts import Complaint, CopyFacts, LabelDraft

CHECKS = (
    identity.first_words,
    identity.date_first,
    identity.generation,
    identity.not_claimed,
    identity.number,
    identity.original_named,
    identity.original_lost,
    surface.coating,
    lengths.word_count,
    lengths.line_length,
    second.second_language,
)

WEIGHTS = ("refuse", "ask", "warn")


def check(draft: LabelDraft, piece: CopyFacts) -> list[Complaint]:
    """Everything to be said against a draft, refusals first, then what must be answered.

    >>> piece = CopyFacts("R.2026.3", "2026", generation=2, at_least=True)
    >>> draft = LabelDraft("Electrotype copy, 2026", "after the original medal", "R.2026.3")
    >>> for complaint in check(draft, piece):
    ...     print(complaint.severity, complaint.code)
    refuse kind.other
    refuse generation.hidden
    refuse generation.after_original
    """
    found = [complaint for one in CHECKS for complaint in one(draft, piece)]
    return by_weight(found)


def by_weight(complaints: list[Complaint]) -> list[Complaint]:
    return sorted(complaints, key=lambda complaint: WEIGHTS.index(complaint.severity))


def acceptable(complaints: list[Complaint]) -> bool:
    return all(complaint.severity != "refuse" for complaint in complaints)
