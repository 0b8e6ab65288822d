"""An analysis of a bath: burette readings in; the table is asked about what they give."""

from django import forms

from process.forms.asking import AsksUnusual
from process.forms.in_bath import since_made_up
from process.models import BathAnalysis, Constituent
from process.ranges import Opinion, judge
from process.summaries.analyses import analysis_summary
from records import clock
from records.forms.base import RecordForm
from records.numbers import SERIES, next_number

TITRANTS = ("copper", "acid", "chloride")
COPPER = ["copper_method", "copper_titrant_ml", "copper_titrant_mol_l", "copper_sample_ml", "copper_taken_ml",
          "copper_flask_ml"]  # fmt: skip
ACID = ["acid_titrant_ml", "acid_titrant_mol_l", "acid_sample_ml"]
CHLORIDE = ["chloride_titrant_ml", "chloride_titrant_mol_l", "chloride_sample_ml", "chloride_mg_l"]
HYDROMETER = ["hydrometer_be", "hydrometer_modulus", "density_g_cm3"]
TITRATED = {Constituent.COPPER_SULPHATE: "copper", Constituent.SULPHURIC_ACID: "acid"}
BURETTE = [name for name in (*COPPER, *ACID, *CHLORIDE) if name.endswith("_ml")]
NUMBERS = [name for name in (*COPPER, *ACID, *CHLORIDE, "volume_now_l") if name != "copper_method"]


class AnalysisForm(AsksUnusual, RecordForm):
    class Meta:
        model = BathAnalysis
        fields = ["number", "sampled_at", "analyst", "volume_now_l", *COPPER, *ACID, *CHLORIDE, *HYDROMETER,
                  "temperature_degc", "decision", "note"]  # fmt: skip
        ranged = ["temperature_degc", "chloride_mg_l"]
        bounds = dict.fromkeys(BURETTE, (0, 5000)) | {"density_g_cm3": (0.5, 2), "copper_flask_ml": (0, 20_000)}
        evidence_fields = ["copper_titrant_ml", "acid_titrant_ml", "chloride_titrant_ml", "chloride_mg_l"]
        groups = [
            ("The sample", ["number", "sampled_at", "analyst", "temperature_degc", "volume_now_l"]),
            ("Copper: one mole of titrant to one of copper", COPPER),
            ("Acid: alkali", ACID),
            ("What do you decide?", ["decision", "note"]),
            ("Was chloride determined?", CHLORIDE),
            ("Was a hydrometer read?", HYDROMETER),
        ]
        help_texts = {
            "acid_titrant_mol_l": "A 1 N alkali has 1 mol/L.",
            "sampled_at": "Level at the mark and mixed before the sample.",
            "copper_sample_ml": "What was titrated: the bath itself, or the part taken from the flask.",
            "copper_taken_ml": "Only where the bath was diluted first.",
            "chloride_titrant_ml": "By silver nitrate; else enter below what a strip or a laboratory found.",
            "hydrometer_be": "Degrees Baumé mean nothing without the modulus of the scale.",
            "density_g_cm3": "Instead of degrees Baumé.",
        }

    def __init__(self, *args, **kwargs) -> None:
        super().__init__(*args, **kwargs)
        if self.instance._state.adding:
            self.offer("number", next_number(BathAnalysis, SERIES["analysis"]))
            self.offer("sampled_at", clock.now())

    def clean_sampled_at(self):
        return since_made_up(self.instance.bath, self.cleaned_data["sampled_at"])

    def opinions(self) -> dict[str, Opinion]:
        """The table is asked about what the titrations give, too: a slipped decimal shows there first."""
        asked = super().opinions()
        if self._can_be_worked_out():
            drawn = BathAnalysis(bath=self.instance.bath, **{name: self.cleaned_data.get(name) for name in NUMBERS})
            for found in analysis_summary(drawn).found:
                asked[f"{found.label} found"] = judge(f"{found.constituent}_g_l", found.quantity.m_as("g/L"))
        return asked | self._of_nothing()

    def _of_nothing(self) -> dict[str, Opinion]:
        """No titrant used: nothing dissolved, or a burette that nobody read."""
        empty = [each for each, prefix in TITRATED.items() if self.cleaned_data.get(f"{prefix}_titrant_ml") == 0]
        return {f"{each.label} found": judge(f"{each.value}_g_l", 0.0) for each in empty}

    def _can_be_worked_out(self) -> bool:
        given = [self.cleaned_data.get(name) for name in NUMBERS]
        return all(value is None or value > 0 for value in given)

    def clean(self) -> dict:
        cleaned = super().clean()
        burettes = ("copper_titrant_ml", "acid_titrant_ml")
        if not any(name in self.errors or cleaned.get(name) is not None for name in burettes):
            raise forms.ValidationError(
                "Enter at least one titration: how much titrant was used for copper, or for acid."
            )
        self._need_strengths(cleaned)
        self._need_flask_and_modulus(cleaned)
        return cleaned

    def _need_strengths(self, cleaned: dict) -> None:
        for kind in TITRANTS:
            if cleaned.get(f"{kind}_titrant_ml") is None:
                continue
            for name in (f"{kind}_titrant_mol_l", f"{kind}_sample_ml"):
                if name not in self.errors and (cleaned.get(name) or 0) <= 0:
                    self.add_error(name, "The result cannot be worked out without it: enter more than zero.")

    def _need_flask_and_modulus(self, cleaned: dict) -> None:
        """Half of a pair says nothing."""
        taken, flask = cleaned.get("copper_taken_ml"), cleaned.get("copper_flask_ml")
        if (taken is None) != (flask is None):
            missing = "copper_flask_ml" if flask is None else "copper_taken_ml"
            self.add_error(missing, "A dilution has two volumes: the bath taken, and the flask it was filled up in.")
        elif taken is not None and not 0 < taken <= flask:
            self.add_error("copper_taken_ml", "The flask holds at least what was taken: look at the two volumes again.")
        if cleaned.get("hydrometer_be") is not None and not cleaned.get("hydrometer_modulus"):
            self.add_error("hydrometer_modulus", "Name the modulus: it is printed on the hydrometer, 145 or 144.3.")
        for name in ("hydrometer_be", "volume_now_l"):
            if cleaned.get(name) == 0:
                self.add_error(name, "Such a reading is not possible: look at the scale and at the unit again.")
