"""Closing a skinned core: what was done before, and the decision."""

from typing import Any

from django import forms

from process.models import CoreClosing
from process.summaries.hanging import refuse_before_it_came_out
from records import clock
from records.forms.base import RecordForm
from records.forms.measurements import not_ahead


class ClosingForm(RecordForm):
    class Meta:
        model = CoreClosing
        fields = [
            "rinsing", "rinse_ph", "neutralising", "pinholes_count", "pinhole_test", "decided_on", "decision",
            "sealed_with", "sealed_on", "vent", "note",
        ]  # fmt: skip
        groups = [
            ("Before it is closed", ["rinsing", "rinse_ph", "neutralising", "pinholes_count", "pinhole_test"]),
            ("The decision", ["decided_on", "decision"]),
            ("If it is closed", ["sealed_with", "sealed_on", "vent"]),
            ("Anything else", ["note"]),
        ]
        labels = {"rinse_ph": "Last rinse, pH"}
        widgets = {"note": forms.Textarea({"rows": 3})}
        help_texts = {
            "rinse_ph": "6 to 7.5 is usual. Below, acid is still coming out.",
            "neutralising": "“dilute bicarbonate, 10 min, then deionised water”; or “none needed”.",
            "pinholes_count": "Nought included.",
            "pinhole_test": "“10× lens, damp pH paper”.",
            "sealed_with": "Wax, acrylic, plug; where.",
            "vent": "Where air still reaches the core; or “none”.",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["decision"].choices = [("", "choose"), *CoreClosing.Decision.choices]
        self.offer("decided_on", clock.today())

    def clean_decided_on(self):
        day = not_ahead(self.cleaned_data["decided_on"])
        return refuse_before_it_came_out(self.instance.shell.cathode, day)

    def clean_sealed_on(self):
        return refuse_before_it_came_out(self.instance.shell.cathode, self.cleaned_data["sealed_on"])

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        acid, words = cleaned.get("rinse_ph"), "A pH lies between 0 and 14: read the paper or the meter again."
        if acid is not None and not 0 <= acid <= 14:
            self.add_error("rinse_ph", words)
        if cleaned.get("sealed_on") and cleaned["sealed_on"] > clock.today():
            self.add_error("sealed_on", "This day lies in the future: enter it when it is closed.")
        if cleaned.get("sealed_on") and cleaned.get("decision") in {"keep_drying", "reject"}:
            self.add_error("sealed_on", "A day of closing, and the decision is not to close: one of the two is wrong.")
        return cleaned


class SignClosingForm(forms.Form):
    """Nothing is asked but the name; the version says what was read."""

    version = forms.CharField(required=False, widget=forms.HiddenInput)
