"""Weighing in water: the piece is asked after first, then the two readings and the water's warmth."""

from typing import Any

from django import forms

from process.forms.asking import AsksUnusual
from process.models import HydrostaticWeighing
from process.summaries.wetting import refusal_of
from records import clock
from records.forms.base import RecordForm
from records.forms.tokens import SentOnce
from records.units import show

SOUND = "sound"
STATES = {
    "open": "An open seam lets water in: close it first, or leave it dry.",
    "corroded": "Corrosion holds water and goes on in it: leave it dry.",
    "gilded": "Water creeps under porous gilding or silvering: leave it dry.",
    "plaster": "Plaster, a core or a filling that drinks: never in water.",
}
CHOICES = [
    ("", "choose"), (SOUND, "sound metal, all seams closed"), ("open", "an open seam, pore or hole"),
    ("corroded", "corroded, powdery or flaking"), ("gilded", "gilded or silvered, and porous or lifting"),
    ("plaster", "plaster, a core, or unsealed filling"),
]  # fmt: skip
AIR = ("air_temperature_degc", "air_pressure_hpa", "air_humidity_pct")


class HydrostaticForm(SentOnce, AsksUnusual, RecordForm):
    state = forms.ChoiceField(label="The piece is", choices=CHOICES, help_text="Look at it under the lens first.")

    class Meta:
        model = HydrostaticWeighing
        fields = ["weighed_at", "weighed_by", "in_air_g", "in_water_g", "water_temperature_degc", *AIR, "note"]
        evidence_fields = ["in_air_g", "in_water_g"]
        ranged: list[str] = []
        judged_as = dict.fromkeys(("water_temperature_degc", "air_temperature_degc"), "room_temperature_degc")
        groups = [
            ("The piece", ["state"]),
            ("The weighing", ["in_air_g", "in_water_g", "water_temperature_degc", "weighed_at", "weighed_by", "note"]),
            ("Was the air read?", list(AIR)),
        ]

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if self.instance._state.adding:
            self.offer("weighed_at", clock.now())
        else:
            self.initial["state"] = SOUND

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        if sentence := refusal_of(self.instance.item):
            raise forms.ValidationError(sentence)
        if (state := cleaned.get("state")) in STATES:
            self.add_error("state", STATES[state])
        air, water = cleaned.get("in_air_g"), cleaned.get("in_water_g")
        if air is not None and air <= 0:
            self.add_error("in_air_g", "A piece weighs more than nothing: weigh again.")
        elif air is not None and water is not None and not 0 <= water < air:
            words = f"In water it must read less than the {show(air, '_g')} in air: look for bubbles, weigh again."
            self.add_error("in_water_g", words)
        self._look_at_the_air(cleaned)
        return cleaned

    def _look_at_the_air(self, cleaned: dict[str, Any]) -> None:
        given = [name for name in AIR if cleaned.get(name) is not None]
        if given and len(given) < len(AIR):
            missing = next(name for name in AIR if name not in given)
            self.add_error(missing, "The air’s buoyancy needs all three; else leave all three empty.")
