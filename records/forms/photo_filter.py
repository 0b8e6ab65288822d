"""The filter of photographs, set as a sentence."""

from django import forms
from django.db.models import QuerySet

from records import searching
from records.models import Item, Photo

LOOKED_AT = [("", "any"), ("doubtful", "undated or doubtful"), ("bare", "without a scale in the frame")]


class PhotoFilter(forms.Form):
    """“Show photographs of … seen as … that are … with the words …”."""

    kind = forms.ChoiceField(label="of", required=False, choices=[("", "anything"), *Item.Kind.choices])
    view = forms.ChoiceField(label="seen as", required=False, choices=[("", "any view"), *Photo.View.choices])
    state = forms.ChoiceField(label="that are", required=False, choices=LOOKED_AT)
    q = forms.CharField(label="of things with the words", required=False, max_length=120)

    def narrow(self, rows: QuerySet) -> QuerySet:
        """The rows that fit; what is not understood narrows nothing and is said beside the sentence."""
        if not self.is_valid():
            return rows
        chosen = self.cleaned_data
        for column, name in (("item__kind", "kind"), ("view", "view")):
            if chosen[name]:
                rows = rows.filter(**{column: chosen[name]})
        if chosen["state"] == "doubtful":
            rows = rows.doubtful()
        elif chosen["state"] == "bare":
            rows = rows.filter(has_scale=False)
        return searching.find(rows, chosen["q"], "item__search_text")
