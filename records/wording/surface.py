"""Checks that a skin of silver or gold is not sold as the metal itself.

Plain bare words for a coated piece are what the hallmarking laws of several countries forbid (for instance
the Hallmarking Act 1973, s. 1 and Sch. 1); this is a check of words, not legal advice.
"""

import re
from collections.abc import Iterator

from records.wording.clauses import clauses, says
from records.wording.facts import Complaint, CopyFacts, LabelDraft, refuse, warn

_HONEST = {
    "silver": "silvered|silver[- ]plated|plated with silver|skin of silver|silver skin|silver coating",
    "gold": "gilt|gilded|gold[- ]plated|plated with gold|skin of gold|gold skin|gold coating",
}
# Words after which the metal is the original's and not the copy's.
_OF_ANOTHER = "after|of an?|of the|original|repeats|model|coin itself|lighter than|instead of"


def says_coating(metal: str, text: str) -> bool:
    """Whether a text names a coating of this metal for what it is."""
    return metal in _HONEST and says(_HONEST[metal], text)


def _bare(metal: str, clause: str) -> bool:
    rest = re.sub(_HONEST[metal], "", clause, flags=re.IGNORECASE)
    if found := re.search(rf"\b{metal}\b", rest, re.IGNORECASE):
        return not says(_OF_ANOTHER, rest[: found.start()])
    return False


def coating(draft: LabelDraft, piece: CopyFacts) -> Iterator[Complaint]:
    for metal, honest in _HONEST.items():
        bare = [clause for clause in clauses(draft.text) if _bare(metal, clause)]
        plated = {"silver": "silvered or silver-plated", "gold": "gilt or gold-plated"}[metal]
        if bare:
            yield refuse(
                f"metal.{metal}",
                f"“{bare[0]}” calls the copy {metal}. Write {plated}, in letters as large as the rest, "
                f"or say that the {metal} piece is the original.",
            )
        elif piece.skin == metal and not says(honest, draft.text):
            yield warn(f"skin.{metal}", f"The copy has a skin of {metal} that the wording leaves out. Say {plated}.")
