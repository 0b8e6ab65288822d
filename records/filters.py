"""Filters of lists, set as a sentence: the labels are its parts."""

from itertools import product

from django import forms
from django.db.models import Q, QuerySet

from records import searching
from records.forms.lookup import LookupField
from records.models import Item
from records.searching import spellings


class ItemFilter(forms.Form):
    """“Show objects of kind … held as … kept in … owned by … with the words …”."""

    kind = forms.ChoiceField(label="of kind", required=False, choices=[("", "any"), *Item.Kind.choices])
    status = forms.ChoiceField(label="held as", required=False, choices=[("", "anything"), *Item.Status.choices])
    place = LookupField("places", label="kept in", required=False, words="any place")
    owner = LookupField("parties", label="owned by", required=False, words="anybody")
    q = forms.CharField(label="with the words", required=False, max_length=120)

    def narrow(self, rows: QuerySet) -> QuerySet:
        """The rows that fit; what is not understood narrows nothing and is said beside the sentence."""
        if not self.is_valid():
            return rows
        chosen = self.cleaned_data
        for name in ("kind", "status", "place", "owner"):
            if chosen[name]:
                rows = rows.filter(**{name: chosen[name]})
        return searching.find(rows, chosen["q"])


class PlaceFilter(forms.Form):
    """“Show places inside … whose name has …”."""

    within = LookupField("places", label="inside", required=False, words="any other")
    q = forms.CharField(label="whose name has", required=False, max_length=120)

    def narrow(self, rows: QuerySet) -> QuerySet:
        if not self.is_valid():
            return rows
        chosen = self.cleaned_data
        if chosen["within"]:
            rows = rows.filter(within=chosen["within"])
        return by_words(rows, chosen["q"], "name")


def by_words(rows: QuerySet, typed: str, *columns: str) -> QuerySet:
    """Rows in which every typed word stands in one of the columns."""
    for word in typed.replace("\0", "").split()[:8]:
        said = Q()
        for column, spelling in product(columns, spellings(word)):
            said |= Q(**{f"{column}__icontains": spelling})
        rows = rows.filter(said)
    return rows
