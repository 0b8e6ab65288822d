"""The closed list of sentences in which an examination may end. None of them says “original”."""

from collections.abc import Mapping
from dataclasses import dataclass

from records.telling.signs import SIGNS, Sign

ENOUGH = 5  # signs that must have been looked for before their absence may be spoken of


@dataclass(frozen=True)
class Conclusion:
    key: str
    sentence: str
    advice: str


CONCLUSIONS = {
    each.key: each
    for each in (
        Conclusion("marked", "It is marked as a copy.",
                   "Record the mark with a photograph, give it a number among the copies, and look for its model."),
        Conclusion("electrotype", "Signs of an electrotype were seen: it is very probably a copy made so.",
                   "Record it as a historic copy with its model not known, and say so on every label."),
        Conclusion("doubtful", "Signs were seen that a copy may show, and other causes too: it may be a copy.",
                   "Treat and label it as not settled; set it beside a documented piece, or ask for analysis."),
        Conclusion("none_seen", "No sign of a copy was seen among those looked for; this does not prove an original.",
                   "Say what was not looked for. A copy made with care can lack every one of these signs."),
        Conclusion("too_little", "Too little was looked for to say anything.",
                   "Go on with the signs that were not checked."),
    )
}  # fmt: skip


def conclude(answers: Mapping[str, str]) -> tuple[Conclusion, list[str]]:
    """The sentence and its reasons, from an answer for each sign.

    >>> conclude({"seam": "seen", "mass": "absent"})[0].key
    'electrotype'
    >>> conclude({"seam": "absent"})[0].key
    'too_little'
    """
    seen = _those(answers, "seen")
    absent = _those(answers, "absent")
    unchecked = [sign for sign in SIGNS.values() if sign not in seen and sign not in absent]
    reasons = [
        f"{head}: {'; '.join(_small(sign.words) for sign in signs)}."
        for head, signs in (("Seen", seen), ("Looked for and not seen", absent), ("Not checked", unchecked))
        if signs
    ]
    return CONCLUSIONS[_key(seen, absent)], reasons


def _key(seen: list[Sign], absent: list[Sign]) -> str:
    weights = {sign.weight for sign in seen}
    if "says copy" in weights:
        return "marked"
    if "electrotype" in weights:
        return "electrotype"
    if seen:
        return "doubtful"
    return "none_seen" if len(absent) >= ENOUGH else "too_little"


def _those(answers: Mapping[str, str], answer: str) -> list[Sign]:
    return [sign for key, sign in SIGNS.items() if answers.get(key) == answer]


def _small(words: str) -> str:
    return words[0].lower() + words[1:]
