"""Filters of lists, set as a sentence: the labels are its parts."""

from django import forms
from django.db.models import QuerySet

from records import searching
from records.forms.lookup import LookupField
from records.models import Item


class ItemFilter(forms.Form):
    """“Show objects of kind … held as … kept in … with the words …”."""

    kind = forms.ChoiceField(label="of kind", required=False, choices=[("", "any"), *Item.Kind.choices])
    status = forms.ChoiceField(label="held as", required=False, choices=[("", "anything"), *Item.Status.choices])
    place = LookupField("places", label="kept in", required=False, words="any place")
    q = forms.CharField(label="with the words", required=False, max_length=120)

    def narrow(self, rows: QuerySet) -> QuerySet:
        """The rows that fit; what is not understood narrows nothing and is said beside the sentence."""
        if not self.is_valid():
            return rows
        chosen = self.cleaned_data
        for name in ("kind", "status", "place"):
            if chosen[name]:
                rows = rows.filter(**{name: chosen[name]})
        return searching.find(rows, chosen["q"])
