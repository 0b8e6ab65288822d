from itertools import pairwise

from django import forms

from process.forms.asking import AsksUnusual
from process.forms.in_bath import since_made_up, too_much
from process.forms.metals import metal_field
from process.models import Bath, BathAddition
from records import clock
from records.forms.base import RecordForm
from records.forms.lookup import LookupField
from records.numbers import SERIES, next_number
from records.units import show

TEMPERATURES = ("temperature_warn_low_degc", "temperature_target_degc", "temperature_warn_high_degc")
STRONG_PCT = (94.0, 98.5)  # the density of 96 % acid is within half a per cent of these


class BathForm(AsksUnusual, RecordForm):
    class Meta:
        model = Bath
        fields = ["number", "name", "ion", "volume_l", "conductivity_ms_cm", "place", "made_up_on",
                  "opening_charge_ah", "opening_on", "temperature_target_degc", "temperature_warn_low_degc",
                  "temperature_warn_high_degc", "analysis_valid_days_count", "analysis_valid_ah_l", "anodes",
                  "cautions", "retired_on"]  # fmt: skip
        groups = [
            ("The bath", ["number", "name", "ion", "volume_l", "conductivity_ms_cm", "place", "made_up_on"]),
            ("Its ledger when this record begins", ["opening_charge_ah", "opening_on"]),
            ("Targets", ["temperature_target_degc", "temperature_warn_low_degc", "temperature_warn_high_degc",
                         "analysis_valid_days_count", "analysis_valid_ah_l"]),
            ("Anodes, cautions, end", ["anodes", "cautions", "retired_on"]),
        ]  # fmt: skip

        evidence_fields = ["conductivity_ms_cm"]
        ranged = ["conductivity_ms_cm"]
        judged_as = dict.fromkeys(TEMPERATURES, "temperature_degc")
        help_texts = {"conductivity_ms_cm": "By a meter, at the bath’s temperature: the voltage of a plan is reckoned "
                      "with it. Empty: 150 to 200 mS/cm is taken for acid copper."}  # fmt: skip

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
        conductivity = cleaned.get("conductivity_ms_cm")
        if conductivity is not None and conductivity <= 0:
            self.add_error("conductivity_ms_cm", "No bath conducts so: look at the unit, mS/cm or S/m.")
        warmth = [(name, cleaned[name]) for name in TEMPERATURES if cleaned.get(name) is not None]
        crossed = (name for (_, lower), (name, upper) in pairwise(warmth) if upper < lower)
        if name := next(crossed, None):
            self.add_error(name, "The bounds cross: look below, the temperature wanted, look above must not fall.")
        return cleaned


class AdditionForm(RecordForm):
    class Meta:
        model = BathAddition
        fields = ["added_at", "kind", "what", "mass_g", "volume_ml", "strength_pct", "lot", "added_by", "analysis",
                  "reason"]  # fmt: skip
        groups = [
            ("What was added", ["kind", "what", "mass_g", "volume_ml", "strength_pct", "lot"]),
            ("By whom, when and why", ["added_at", "added_by", "analysis", "reason"]),
        ]

    def __init__(self, *args, **kwargs) -> None:
        super().__init__(*args, **kwargs)
        self.fields["analysis"] = LookupField(
            "analyses-of", within=self.instance.bath.number, few=True, required=False, label="Because of",
            help_text="Number of the analysis.",
        )  # fmt: skip
        if self.instance._state.adding:
            self.offer("added_at", clock.now())
        self.fields["what"].required = False
        self.fields["what"].help_text = "Empty for salt, acid, water and chloride: what was chosen says it."

    def clean_added_at(self):
        return since_made_up(self.instance.bath, self.cleaned_data["added_at"])

    def clean(self) -> dict:
        cleaned = super().clean()
        self._name_it(cleaned)
        self._within_the_bath(cleaned)
        self._look_at_the_acid(cleaned)
        for name in ("mass_g", "volume_ml"):
            if (value := cleaned.get(name)) is not None and value <= 0:
                self.add_error(name, "More than nothing was added: enter the amount again, or leave it empty.")
        if cleaned.get("mass_g") is None and cleaned.get("volume_ml") is None and not self.errors:
            raise forms.ValidationError("Say how much was added: a mass or a volume.")
        return cleaned

    def _name_it(self, cleaned: dict) -> None:
        """A substance that the choice names need not be typed with wet gloves."""
        kind = cleaned.get("kind") or ""
        if cleaned.get("what") or "what" in self.errors:
            return
        if kind in ("", BathAddition.Kind.ADDITIVE, BathAddition.Kind.OTHER):
            self.add_error("what", "Say what was added, as its package names it, or choose its kind above.")
        else:
            cleaned["what"] = BathAddition.Kind(kind).label

    def _within_the_bath(self, cleaned: dict) -> None:
        """A slip between g and kg, or mL and L, would spoil every prediction after it."""
        bath, kind = self.instance.bath, cleaned.get("kind") or ""
        mass, volume = cleaned.get("mass_g"), cleaned.get("volume_ml")
        if mass and (words := too_much(bath, kind, mass)):
            self.add_error("mass_g", words)
        if volume is not None and volume > 1000 * bath.volume_l:
            words = f"The bath holds {show(bath.volume_l, '_l')} at its mark: look at the number and its unit again."
            self.add_error("volume_ml", words)

    def _look_at_the_acid(self, cleaned: dict) -> None:
        """The volume of an acid tells its mass only at a known density: that of strong acid."""
        share = cleaned.get("strength_pct")
        if share == 0:
            self.add_error("strength_pct", "A strength is more than 0 and at most 100 %.")
        weak = share is not None and not STRONG_PCT[0] <= share <= STRONG_PCT[1]
        if cleaned.get("kind") == BathAddition.Kind.SULPHURIC_ACID and weak and cleaned.get("mass_g") is None:
            self.add_error("mass_g", "Acid of this strength has another density: weigh it, and enter its mass.")
