"""The second language of a label is checked by what can be read in any: its first words, its date, its length."""

import re
from collections.abc import Iterator

from records.wording.clauses import first_year
from records.wording.facts import Complaint, CopyFacts, LabelDraft, refuse
from records.wording.lengths import WORDS_MOST, words_in

# Stems that say “copy” in European languages; a museum writes its heading with one of them.
SAYS_COPY = re.compile(
    r"cop(?:y|ie|ia|ía|ià)|kop(?:ie|ia|ija|io|ya)|k[óò]p|galvano|electrot|elektrot|reprodu|facsimil|faksimil|abguss|"
    r"nachbildung|moulage|calco|odlitek|kópia|másolat|kopi|копи|копі|αντίγραφο|replica|repli[ck]",
    re.IGNORECASE,
)


def second_language(draft: LabelDraft, piece: CopyFacts) -> Iterator[Complaint]:
    if not draft.second_heading:
        return
    if not SAYS_COPY.search(draft.second_heading):
        yield refuse(
            "second.kind",
            "The heading in the second language does not say that this is a copy, and its readers see nothing else. "
            "Begin it with the kind of copy as well.",
        )
    own = first_year(piece.made_date)
    read = first_year(f"{draft.second_heading}\n{draft.second_text}")
    if own and (own not in draft.second_heading or read != own):
        yield refuse(
            "second.date",
            f"The heading in the second language must give {own}, the date of the copy, before any other year.",
        )
    count = words_in(f"{draft.second_heading} {draft.second_text}")
    if count > WORDS_MOST:
        yield refuse(
            "second.words", f"{count} words in the second language; nobody standing reads more than {WORDS_MOST}."
        )
