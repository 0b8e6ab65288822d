"""Closing the file of a commission, and opening it again."""

from django import forms

from records.models import FileStep


class CloseForm(forms.Form):
    outcome = forms.ChoiceField(label="Closed as", choices=FileStep.Outcome.choices)
    words = forms.CharField(
        label="What is to be said", widget=forms.Textarea({"rows": 3}), required=False,
        help_text="Needed where it is withdrawn or refused: by whom, and why.",
    )  # fmt: skip


class ReopenForm(forms.Form):
    words = forms.CharField(label="Why it is opened again", widget=forms.Textarea({"rows": 3}))
