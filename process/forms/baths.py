from itertools import pairwise

from django import forms

from process.forms.asking import AsksUnusual
from process.forms.metals import metal_field
from process.models import Bath, BathAddition, BathAnalysis, BathLimit
from process.ranges import Opinion, judge
from process.summaries.baths import analysis_summary
from records import clock
from records.forms.base import RecordForm
from records.numbers import SERIES, next_number


class BathForm(RecordForm):
    class Meta:
        model = Bath
        fields = ["number", "name", "ion", "volume_l", "place", "made_up_on", "opening_charge_ah", "opening_on",
                  "temperature_target_degc", "temperature_warn_low_degc", "temperature_warn_high_degc",
                  "analysis_valid_days_count", "analysis_valid_ah_l", "anodes", "cautions", "retired_on"]  # fmt: skip
        groups = [
            ("The bath", ["number", "name", "ion", "volume_l", "place", "made_up_on"]),
            ("Its ledger when this record begins", ["opening_charge_ah", "opening_on"]),
            ("Targets", ["temperature_target_degc", "temperature_warn_low_degc", "temperature_warn_high_degc",
                         "analysis_valid_days_count", "analysis_valid_ah_l"]),
            ("Anodes, cautions, end", ["anodes", "cautions", "retired_on"]),
        ]  # fmt: skip

    def __init__(self, *args, **kwargs) -> None:
        super().__init__(*args, **kwargs)
        self.fields["ion"] = metal_field()
        if not self.instance.pk:
            self.offer("number", next_number(Bath, SERIES["bath"]))

    def clean(self) -> dict:
        cleaned = super().clean()
        volume = cleaned.get("volume_l")
        if volume is not None and volume <= 0:
            self.add_error("volume_l", "A bath holds more than nothing: enter its volume at the mark.")
        return cleaned


class BathLimitForm(RecordForm):
    class Meta:
        model = BathLimit
        fields = ["target_g_l", "warn_low_g_l", "warn_high_g_l", "stop_low_g_l", "stop_high_g_l"]

    def clean(self) -> dict:
        """Bounds stand in the order stop, look, target, look, stop; any of them may be left open."""
        cleaned = super().clean()
        order = ["stop_low_g_l", "warn_low_g_l", "target_g_l", "warn_high_g_l", "stop_high_g_l"]
        given = [(name, cleaned[name]) for name in order if cleaned.get(name) is not None]
        for (_, lower), (name, upper) in pairwise(given):
            if upper < lower:
                self.add_error(
                    name, "The bounds cross: stop below, look below, target, look above, stop above must not fall."
                )
                break
        return cleaned


TITRATION = ("copper_titrant_ml", "copper_titrant_mol_l", "copper_sample_ml", "acid_titrant_ml", "acid_titrant_mol_l",
             "acid_sample_ml")  # fmt: skip


class AnalysisForm(AsksUnusual, RecordForm):
    class Meta:
        model = BathAnalysis
        fields = [
            "number",
            "sampled_at",
            "analyst",
            "copper_titrant_ml",
            "copper_titrant_mol_l",
            "copper_sample_ml",
            "acid_titrant_ml",
            "acid_titrant_mol_l",
            "acid_sample_ml",
            "chloride_mg_l",
            "temperature_degc",
            "decision",
            "note",
        ]
        ranged = ["temperature_degc"]
        groups = [
            ("The sample", ["number", "sampled_at", "analyst", "temperature_degc"]),
            (
                "Copper: EDTA or thiosulphate, one to one",
                ["copper_titrant_ml", "copper_titrant_mol_l", "copper_sample_ml"],
            ),
            ("Acid: alkali", ["acid_titrant_ml", "acid_titrant_mol_l", "acid_sample_ml"]),
            ("Chloride and decision", ["chloride_mg_l", "decision", "note"]),
        ]
        help_texts = {
            "acid_titrant_mol_l": "A 1 N alkali has 1 mol/L.",
            "sampled_at": "Level at the mark and mixed before the sample.",
        }

    def __init__(self, *args, **kwargs) -> None:
        super().__init__(*args, **kwargs)
        if self.instance._state.adding:
            self.offer("number", next_number(BathAnalysis, SERIES["analysis"]))
            self.offer("sampled_at", clock.now())

    def opinions(self) -> dict[str, Opinion]:
        """The table is asked about what the titrations give, too: a slipped decimal shows there first."""
        asked = super().opinions()
        if self._can_be_worked_out():
            drawn = BathAnalysis(bath=self.instance.bath, **{n: self.cleaned_data.get(n) for n in TITRATION})
            for found in analysis_summary(drawn).found:
                asked[f"{found.label} found"] = judge(f"{found.constituent}_g_l", found.figure.value)
        return asked

    def _can_be_worked_out(self) -> bool:
        given = [self.cleaned_data.get(name) for name in TITRATION]
        return all(value is None or value > 0 for value in given)

    def clean(self) -> dict:
        cleaned = super().clean()
        burettes = ("copper_titrant_ml", "acid_titrant_ml")
        if not any(name in self.errors or cleaned.get(name) is not None for name in burettes):
            raise forms.ValidationError(
                "Enter at least one titration: how much titrant was used for copper, or for acid."
            )
        for name in ("copper_titrant_ml", "acid_titrant_ml", "chloride_mg_l"):
            if (value := cleaned.get(name)) is not None and value < 0:
                self.add_error(name, "Less than nothing cannot be used: check the burette reading.")
        self._need_strengths(cleaned)
        return cleaned

    def _need_strengths(self, cleaned: dict) -> None:
        for kind in ("copper", "acid"):
            if cleaned.get(f"{kind}_titrant_ml") is None:
                continue
            for name in (f"{kind}_titrant_mol_l", f"{kind}_sample_ml"):
                if name not in self.errors and (cleaned.get(name) or 0) <= 0:
                    self.add_error(name, "The result cannot be worked out without it: enter more than zero.")


class AdditionForm(RecordForm):
    class Meta:
        model = BathAddition
        fields = ["added_at", "what", "mass_g", "volume_ml", "lot", "added_by", "reason"]

    def __init__(self, *args, **kwargs) -> None:
        super().__init__(*args, **kwargs)
        if self.instance._state.adding:
            self.offer("added_at", clock.now())

    def clean(self) -> dict:
        cleaned = super().clean()
        if cleaned.get("mass_g") is None and cleaned.get("volume_ml") is None and not self.errors:
            raise forms.ValidationError("Say how much was added: a mass or a volume.")
        return cleaned
