"""Two parts of a mixture by their densities: a question, nothing is kept."""

from typing import Any

from django import forms

from records.forms.quantities import QuantityField
from records.units import Parsed, show

LEAST_G_CM3, MOST_G_CM3 = 0.1, 23.0  # light foam; osmium, the densest metal, 22.6 (handbook value, from memory)


class MixtureForm(forms.Form):
    of = forms.CharField(widget=forms.HiddenInput, required=False, max_length=40)
    one_g_cm3 = QuantityField("_g_cm3", label="Density of one part")
    other_g_cm3 = QuantityField("_g_cm3", label="Density of the other part")

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        parts = [name for name in ("one_g_cm3", "other_g_cm3") if cleaned.get(name) is not None]
        for name in parts:
            self._look_at(name, cleaned[name])
        if len(parts) == 2 and not self.errors and cleaned["one_g_cm3"].canonical == cleaned["other_g_cm3"].canonical:
            self.add_error("other_g_cm3", "Two parts of one density cannot be told apart by weight: give another.")
        return cleaned

    def _look_at(self, name: str, given: Parsed) -> None:
        if not LEAST_G_CM3 <= given.canonical <= MOST_G_CM3:
            least, most = show(LEAST_G_CM3, "_g_cm3"), show(MOST_G_CM3, "_g_cm3")
            self.add_error(name, f"Solids lie between {least} and {most}: look at the number and its unit again.")
