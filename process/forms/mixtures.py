"""Two parts of a mixture by their densities: a question, nothing is kept."""

from typing import Any

from django import forms

from records.forms.quantities import QuantityField


class MixtureForm(forms.Form):
    of = forms.CharField(widget=forms.HiddenInput, required=False, max_length=40)
    one_g_cm3 = QuantityField("_g_cm3", label="Density of one part")
    other_g_cm3 = QuantityField("_g_cm3", label="Density of the other part")

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        if not self.errors and cleaned["one_g_cm3"].canonical == cleaned["other_g_cm3"].canonical:
            self.add_error("other_g_cm3", "Two parts of one density cannot be told apart by weight: give another.")
        return cleaned
