"""A core from its cast to the bath: each number as the balance showed it, never computed and written as weighed."""

from typing import Any

from process.forms.asking import AsksUnusual
from process.forms.moulds import IdentityFields, not_in_future
from process.models import Core
from process.ranges import Opinion
from process.summaries import cores
from records import clock
from records.forms.base import RecordForm
from records.forms.lookup import LookupField
from records.models import Item
from records.numbers import SERIES, next_number

CAST = ["material", "water_plaster_pct", "armature", "armature_place", "linear_change_pct", "allowance_mm"]
DRIED = ["drying_temperature_degc", "dry_mass_g"]
SEALED = ["sealing", "sealing_temperature_degc", "sealing_h", "sealed_mass_g"]
LEAK = ["leak_before_g", "leak_after_g", "leak_soak_h", "leak_gain_g"]
READY = ["wires_g", "ready_mass_g", "metal_stops", "vents"]
MASSES = ("dry_mass_g", "sealed_mass_g", "leak_before_g", "leak_after_g", "ready_mass_g")
POSSIBLE = {
    "drying_temperature_degc": (-20, 300),
    "sealing_temperature_degc": (-20, 300),
    "sealing_h": (0, 1e4),
    "leak_soak_h": (0, 1e4),
}  # what no plaster sees; common sense, no source
USUAL_WATER_PCT = (60.0, 80.0)  # of the plaster's mass; common practice, from memory


def _too_light(name: str, value: Any) -> bool:
    """A mass that is none; wires there may be none."""
    return (name in MASSES and value <= 0) or (name == "wires_g" and value < 0)


class CoreFields(AsksUnusual, RecordForm):
    """What may be entered at once or bit by bit, as the core comes along."""

    class Meta:
        model = Core
        fields = [*CAST, *DRIED, *SEALED, *LEAK, *READY]
        ranged = ["drying_temperature_degc", "sealing_temperature_degc"]
        bounds = POSSIBLE
        evidence_fields = ["linear_change_pct"]
        groups = [
            ("The cast", CAST), ("Dried", DRIED), ("Waterproofed", SEALED), ("Leak test", LEAK),
            ("Ready for the bath", READY),
        ]  # fmt: skip
        help_texts = {
            "material": "The plaster as its bag names it.",
            "water_plaster_pct": "By mass; 65 % is what the trade calls 0.65. 60 to 80 % is usual.",
            "armature": "Avoid iron: it rusts and splits the skin. None, or stainless steel, copper, glass fibre.",
            "allowance_mm": "Usually nothing: the copy is then larger by twice the thickness of its skin.",
            "drying_temperature_degc": "At most 45 °C: hotter, plaster burns and crumbles.",
            "dry_mass_g": "When two weighings agree. The series itself is kept on the core’s page.",
            "sealing": "Wax, stearin, resin: as its package names it.",
            "sealed_mass_g": "10 to 25 % more than dry is usual; the percentage is reckoned for you.",
            "leak_before_g": "Left empty it is the mass after waterproofing.",
            "leak_after_g": "Wiped dry after the time in water; up to 0.2 % more is good.",
            "leak_gain_g": "Only where nothing but the gain was written down.",
            "wires_g": "What is soldered or tied on and stays on while it is weighed.",
            "ready_mass_g": "As the balance showed it, with its wires. Core and wires are added up beside it.",
            "metal_stops": "“at the back rim, 5 mm inside”.",
            "vents": "Leave no blind pocket.",
        }

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        for name in (*MASSES, "wires_g"):
            value = cleaned.get(name)
            if value is not None and _too_light(name, value):
                self.add_error(name, "A piece weighs more than nothing: weigh again.")
        dry, sealed = cleaned.get("dry_mass_g"), cleaned.get("sealed_mass_g")
        if dry and sealed is not None and sealed < dry and "sealed_mass_g" not in self.errors:
            self.add_error("sealed_mass_g", "After waterproofing it weighs more than dry: one of the two is wrong.")
        return cleaned

    def opinions(self) -> dict[str, Opinion]:
        """What the row as typed would say of itself."""
        found = super().opinions()
        typed = {name: self.cleaned_data.get(name) for name in self.Meta.fields if name in self.cleaned_data}
        row = Core(
            **{name: value for name, value in typed.items() if value is not None and not _too_light(name, value)}
        )
        low, high = USUAL_WATER_PCT
        water = typed.get("water_plaster_pct")
        if water is not None and not low <= water <= high:
            words = f"{water:g} % of water to plaster is unusual ({low:g} to {high:g} % is usual; 0.65 is 65 %)."
            found["water_plaster_pct"] = Opinion("unusual", words)
        if cores.has_iron(row.armature):
            found["armature"] = Opinion("unusual", cores.IRON_CAUTION)
        if row.dry_mass_g and row.sealed_mass_g:
            self._doubt(found, "sealed_mass_g", cores.unusual_uptake(cores.taken_up(row)))
        self._ask_leak(found, row)
        self._doubt(found, "ready_mass_g", cores.difference_words(row))
        return found

    def _ask_leak(self, found: dict[str, Opinion], row: Core) -> None:
        self._doubt(found, "leak_after_g", cores.leak_words(cores.leak_of(row)))
        gain, before, after = row.leak_gain_g, row.leak_before_g or row.sealed_mass_g, row.leak_after_g
        if None not in (gain, before, after) and abs(after - before - gain) > cores.SAME_G:
            words = (
                f"The weighings of the leak test differ by {after - before:.1f} g, and a gain of {gain:g} g is written."
            )
            self._doubt(found, "leak_gain_g", words)

    def _doubt(self, found: dict[str, Opinion], name: str, words: str) -> None:
        if words:
            found[name] = Opinion("unusual", words)


class CoreForm(IdentityFields, CoreFields):
    mould = LookupField("moulds", label="Cast in", help_text="Number of the mould.")

    class Meta(CoreFields.Meta):
        fields = ["cast_on", *CoreFields.Meta.fields]
        groups = [
            ("The cast", ["number", "title", "mould", "cast_on", *CAST, "owner", "place"]), *CoreFields.Meta.groups[1:],
        ]  # fmt: skip

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.offer("number", next_number(Item, SERIES["core"]))
        self.offer("cast_on", clock.today())

    def clean_cast_on(self):
        return not_in_future(self.cleaned_data["cast_on"])


class CoreChangeForm(CoreFields):
    """From which mould it was cast, and when, is a fact of its descent."""
