"""Checks that a label can be read standing up. Figures: accessible exhibition guidelines, common practice."""

from collections.abc import Iterator

from records.wording.facts import Complaint, CopyFacts, LabelDraft, refuse, warn

WORDS_GOOD, WORDS_MOST = 50, 100
LINE_MOST = 55


def words_in(text: str) -> int:
    return sum(any(letter.isalnum() for letter in word) for word in text.split())


def word_count(draft: LabelDraft, piece: CopyFacts) -> Iterator[Complaint]:
    count = words_in(draft.text)
    if count > WORDS_MOST:
        yield refuse(
            "words.many",
            f"{count} words; nobody standing reads more than {WORDS_MOST}. Move the rest to a leaflet.",
        )
    elif count > WORDS_GOOD:
        yield warn("words.many", f"{count} words; {WORDS_GOOD} or fewer are read to the end. Shorten if you can.")


def line_length(draft: LabelDraft, piece: CopyFacts) -> Iterator[Complaint]:
    long = [line for line in draft.lines if len(line) > LINE_MOST]
    if long:
        yield warn(
            "line.long",
            f"A line has {max(map(len, long))} characters; the eye loses its place after {LINE_MOST}. "
            "Break the line where a reader takes breath.",
        )
