"""Which words of the vocabulary fit a thing: groups in order, the likeliest first."""

from collections.abc import Iterable
from itertools import groupby

from records.models import Item, Term
from records.searching import fold

GENERAL = "any object"
# What a thing may be called that the vocabulary groups under a wider word.
WIDER = {"bronze": "copper alloy", "brass": "copper alloy", "gypsum": "plaster", "gilding": "gilt"}


def fitting_first(terms: Iterable[Term], item: Item) -> list[tuple[str, list[Term]]]:
    """(group, terms): the groups that share most words with the thing, then those for any object, then the rest."""
    known = _words(f"{item.get_kind_display()} {item.object_type} {item.materials} {item.title}")
    ordered = sorted(terms, key=lambda term: (term.group, term.label))
    groups = [(group, list(found)) for group, found in groupby(ordered, key=lambda term: term.group)]
    score = {group: len(known & _words(group)) for group, _ in groups}
    best = max(score.values(), default=0)

    def rank(entry: tuple[str, list[Term]]) -> tuple[int, int, str]:
        group = entry[0]
        place = 0 if best and score[group] == best else 1 if group == GENERAL else 2
        return place, -score[group], group

    return sorted(groups, key=rank)


def _words(text: str) -> set[str]:
    folded = "".join(letter if letter.isalnum() else " " for letter in fold(text))
    words = {word for word in folded.split() if len(word) > 2}
    return words | {wider for word in words for wider in WIDER.get(word, "").split()}
