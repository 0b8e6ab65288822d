"""The word of a finding: choices grouped by kind of object, the likeliest first, each with its neutral definition."""

from collections.abc import Iterable
from itertools import groupby
from typing import Any

from django import forms

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


class TermSelect(forms.Select):
    """A choice of words; the definitions stand beneath, folded, and the chosen one's is shown."""

    template_name = "records/_term_choice.html"
    groups: list[tuple[str, list[Term]]] = []

    def get_context(self, name: str, value: Any, attrs: dict[str, Any] | None) -> dict[str, Any]:
        context = super().get_context(name, value, attrs)
        chosen = next((term for _, terms in self.groups for term in terms if str(term.pk) == str(value)), None)
        return {**context, "groups": self.groups, "chosen": chosen}


def offer_terms(field: forms.ModelChoiceField, item: Item, current: Term | None) -> None:
    """Fill the field with the findings' vocabulary; a retired word stays only where it is in use."""
    rows = Term.objects.filter(scheme=Term.Scheme.FINDING)
    terms = [term for term in rows if not term.is_retired or term == current]
    field.queryset = rows
    field.widget = TermSelect()
    field.widget.groups = fitting_first(terms, item)
    named = [(group or "other", [(term.pk, term.label) for term in found]) for group, found in field.widget.groups]
    field.choices = [("", "choose a word"), *named]
    field.error_messages["invalid_choice"] = "Choose a word from the list; the museum adds new ones under Words."
    field.error_messages["required"] = "Choose the word for what is seen."
