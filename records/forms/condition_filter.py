"""The filter of condition reports, set as a sentence."""

from django import forms
from django.db.models import QuerySet

from records import searching
from records.models import ConditionReport, Grade

OCCASIONS = [("", "any occasion"), *ConditionReport.Occasion.choices]
SIGNED = [("", "signed or not"), ("no", "not signed yet"), ("yes", "signed")]


class ConditionFilter(forms.Form):
    """“Show reports written … that are … with the grade … on objects with the words …”."""

    occasion = forms.ChoiceField(label="on", required=False, choices=OCCASIONS)
    signed = forms.ChoiceField(label="that are", required=False, choices=SIGNED)
    grade = forms.ChoiceField(label="with grade", required=False, choices=[("", "any"), *Grade.choices])
    q = forms.CharField(label="on objects with the words", required=False, max_length=120)

    def narrow(self, rows: QuerySet) -> QuerySet:
        """Rows annotated with `shown_grade`; what is not understood narrows nothing and is said beside the sentence."""
        if not self.is_valid():
            return rows
        chosen = self.cleaned_data
        if chosen["occasion"]:
            rows = rows.filter(occasion=chosen["occasion"])
        if chosen["signed"]:
            rows = rows.filter(signed_at__isnull=chosen["signed"] == "no")
        if chosen["grade"]:
            rows = rows.filter(shown_grade=chosen["grade"])
        return searching.find(rows, chosen["q"], "item__search_text")
