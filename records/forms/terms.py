"""The word of a finding: choices grouped by kind of object, the likeliest first, each with its neutral definition."""

from typing import Any

from django import forms

from records.fitting_words import fitting_first
from records.models import Item, Term


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
