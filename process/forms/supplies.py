"""Power units, prices and throw tests: what plans are reckoned with."""

from typing import Any

from django import forms

from process.forms.asking import AsksUnusual
from process.forms.in_bath import since_made_up
from process.forms.metals import metal_field
from process.forms.people import person_field
from process.models import PowerUnit, PriceList, ThrowTest
from process.ranges import Opinion
from records import clock
from records.forms.base import RecordForm
from records.forms.money import say_currency


def _above_zero(form: RecordForm, cleaned: dict[str, Any], *names: str) -> None:
    for name in names:
        if cleaned.get(name) is not None and cleaned[name] <= 0:
            form.add_error(name, "Write more than zero.")


class PowerUnitForm(RecordForm):
    class Meta:
        model = PowerUnit
        fields = [
            "number", "name", "rated_a", "rated_v", "resolution_a", "after_failure", "efficiency_pct",
            "meter_checked_on", "polarity", "note", "retired_on",
        ]  # fmt: skip
        groups = [
            ("The unit", ["number", "name", "rated_a", "rated_v", "resolution_a", "after_failure"]),
            ("Checked", ["meter_checked_on", "polarity"]),
            ("Further", ["efficiency_pct", "note", "retired_on"]),
        ]
        widgets = {"note": forms.Textarea({"rows": 3})}
        help_texts = {
            "resolution_a": "The smallest change of current that it can hold: a 50 A unit rarely holds 0.08 A.",
            "after_failure": "“Stays off” is safer: a current that comes back by itself begins a layer nobody sees.",
        }

    def clean_number(self) -> str:
        number = " ".join(self.cleaned_data["number"].split())
        if set(number) & set("/\\?#%\0") or number.lower() == "new":
            raise forms.ValidationError("A number stands in addresses: write a dash instead of / \\ ? # %.")
        return number

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        _above_zero(self, cleaned, "rated_a", "rated_v", "resolution_a", "efficiency_pct")
        return cleaned


class PriceForm(RecordForm):
    class Meta:
        model = PriceList
        fields = [
            "valid_from", "ion", "currency", "labour_money_h", "metal_money_kg", "energy_money_kwh", "bath_money",
            "bath_life_ah", "failure_pct", "note",
        ]  # fmt: skip
        groups = [
            ("From when, in what", ["valid_from", "ion", "currency"]),
            ("Prices", ["labour_money_h", "metal_money_kg", "energy_money_kwh", "bath_money", "bath_life_ah"]),
            ("How often one fails", ["failure_pct", "note"]),
        ]
        widgets = {"note": forms.Textarea({"rows": 3})}
        help_texts = {
            "currency": "What the prices are in: EUR, USD, or whatever the museum reckons in.",
            "failure_pct": "Failed attempts cost too: with 20 % one reckons 1.25 attempts.",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["ion"] = metal_field()
        if self.instance._state.adding:
            self.offer("valid_from", clock.today())
        say_currency(self)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        _above_zero(self, cleaned, "bath_life_ah")
        if cleaned.get("failure_pct") == 100:
            self.add_error("failure_pct", "From 0 to less than 100 %: where every run fails, mend the cause first.")
        return cleaned


class ThrowTestForm(AsksUnusual, RecordForm):
    class Meta:
        model = ThrowTest
        fields = [
            "tested_on", "near_mm", "far_mm", "near_gain_g", "far_gain_g", "current_density_a_dm2", "temperature_degc",
            "tester", "note",
        ]  # fmt: skip
        ranged = ["current_density_a_dm2", "temperature_degc"]
        evidence_fields = ["near_gain_g", "far_gain_g"]
        groups = [
            ("The cell", ["tested_on", "near_mm", "far_mm"]),
            ("What the balance said", ["near_gain_g", "far_gain_g"]),
            ("Under what", ["current_density_a_dm2", "temperature_degc", "tester", "note"]),
        ]
        widgets = {"note": forms.Textarea({"rows": 3})}
        help_texts = {"far_mm": "Usually five times the near distance: the ratio is told with the result."}

    def __init__(self, *args: Any, user: Any = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        person_field(self, "tester", user)
        if self.instance._state.adding:
            self.offer("tested_on", clock.today())

    def clean_tested_on(self):
        return since_made_up(self.instance.bath, self.cleaned_data["tested_on"])

    def opinions(self) -> dict[str, Opinion]:
        near, far = self.cleaned_data.get("near_gain_g"), self.cleaned_data.get("far_gain_g")
        asked = super().opinions()
        if near is not None and far is not None and far > near:
            asked["far_gain_g"] = Opinion("unusual", "more than the near one gained. Were the two changed over?")
        return asked

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        _above_zero(self, cleaned, "near_mm", "far_mm", "near_gain_g", "far_gain_g")
        near, far = cleaned.get("near_mm"), cleaned.get("far_mm")
        if near is not None and far is not None and far <= near:
            self.add_error("far_mm", "The far cathode hangs farther from the anode than the near one.")
        return cleaned
