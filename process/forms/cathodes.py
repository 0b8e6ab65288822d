"""What hangs on the rail: a mould or a core, its coat, its area, its tare."""

from typing import Any

from django import forms

from process.chemistry.plan import relief_disc_area
from process.forms.asking import AsksUnusual
from process.forms.face_area import against_diameter
from process.models import Cathode, Mould
from process.ranges import USUAL, Opinion
from process.summaries.cores import SAME_G
from records import units
from records.forms.base import RecordForm
from records.forms.bounds import FactorField
from records.forms.quantities import QuantityField
from records.units import ureg

USUAL_FACTOR = 1.08  # of a medal in low relief; common practice, from memory
DISC_SHARE = 0.10  # a disc times a factor is good to about a tenth; common practice, from memory


class CathodeForm(AsksUnusual, RecordForm):
    disc_diameter_mm = QuantityField("_mm", required=False, label="Diameter of the disc")
    disc_factor = FactorField(
        units.Reach(1, 3),
        required=False,
        label="Relief factor",
        help_text="Its surface against that of a flat disc: a medal 1.03 to 1.15, ornate work 1.2 to 1.5. Empty: 1.08.",
    )

    class Meta:
        model = Cathode
        fields = [
            "label",
            "mould",
            "core",
            "side",
            "face_area_dm2",
            "total_area_dm2",
            "tare_g",
            "coat",
            "coat_resistance_ohm",
            "coat_distance_mm",
            "rig",
        ]
        evidence_fields = ["face_area_dm2", "total_area_dm2", "tare_g"]
        ranged = ["total_area_dm2", "coat_resistance_ohm"]
        judged_as = {"face_area_dm2": "total_area_dm2"}
        groups = [
            ("What hangs there", ["label", "mould", "core", "side"]),
            ("Its area", ["face_area_dm2", "total_area_dm2"]),
            ("Is it a disc? Then the face follows from its diameter", ["disc_diameter_mm", "disc_factor"]),
            ("Before it goes in", ["tare_g", "coat", "coat_resistance_ohm", "coat_distance_mm", "rig"]),
        ]
        widgets = {"rig": forms.Textarea({"rows": 3})}
        help_texts = {
            "tare_g": "Wires, clips and thieves; for a core its mass ready for the bath. It is taken off the weighing.",
            "face_area_dm2": "What will be seen. Left empty for a disc whose diameter is given below; other shapes, "
            "foil and scans are reckoned under “Area” once the cathode is kept.",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["face_area_dm2"].required = self.fields["tare_g"].required = False
        self.fields["core"].label = "Or core"
        if self.instance._state.adding:
            self.initial["tare_g"] = self.fields["tare_g"].initial = None
        if self.instance.pull_id:
            for name in ("mould", "core"):
                self.fields[name].disabled = True
                self.fields[name].help_text = "It hung in the bath: a pull of it is used."

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        self._from_disc(cleaned)
        mould, core = cleaned.get("mould"), cleaned.get("core")
        if not mould and not core and "mould" not in self.errors:
            self.add_error("mould", "Choose the mould or the core that hangs here: the shell descends from it.")
        if mould and self.is_taken(mould):
            self.add_error(
                "mould", f"{mould.item.number} hangs in this run already: one mould takes one place on the rail."
            )
        if mould and not cleaned.get("side"):
            cleaned["side"] = mould.side
        if cleaned.get("tare_g") is None and "tare_g" not in self.errors:
            cleaned["tare_g"] = (core.ready_mass_g if core else None) or 0.0
        self._areas(cleaned)
        return cleaned

    def is_taken(self, mould: Mould) -> bool:
        return self.instance.run.cathodes.filter(mould=mould).exclude(pk=self.instance.pk).exists()

    def opinions(self) -> dict[str, Opinion]:
        """The tare of a core is its mass ready for the bath: from it the gain of the skin is counted."""
        found, core = super().opinions(), self.cleaned_data.get("core")
        tare, ready = self.cleaned_data.get("tare_g"), core.ready_mass_g if core else None
        if tare is not None and ready is not None and abs(tare - ready) > SAME_G:
            words = f"{core} was weighed ready for the bath at {ready:g} g, and its tare is given as {tare:g} g."
            found["tare_g"] = Opinion("unusual", words)
        face, mould = self.entered.get("face_area_dm2"), self.cleaned_data.get("mould")
        if face and mould and found.get("face_area_dm2", USUAL).is_usual:
            found["face_area_dm2"] = against_diameter(face, mould)
        return found

    def _from_disc(self, cleaned: dict[str, Any]) -> None:
        """The face from the diameter, marked as calculated, with the ± that such an estimate has."""
        diameter = cleaned.get("disc_diameter_mm")
        if (
            cleaned.get("face_area_dm2") is not None
            or diameter is None
            or diameter <= 0
            or "face_area_dm2" in self.errors
        ):
            return
        factor = cleaned.get("disc_factor") or USUAL_FACTOR
        area = round(relief_disc_area(ureg.Quantity(diameter, "mm"), factor).m_as("dm**2"), 4)
        cleaned["face_area_dm2"] = area
        self.entered["face_area_dm2"] = units.Parsed(
            area, "dm²", area, round(area * DISC_SHARE, 4), units.plain(area), "calculated",
            f"disc of {units.plain(diameter)} mm, relief factor {factor:g}",
        )  # fmt: skip

    def _areas(self, cleaned: dict[str, Any]) -> None:
        face, whole = cleaned.get("face_area_dm2"), cleaned.get("total_area_dm2")
        if face is None and "face_area_dm2" not in self.errors:
            self.add_error("face_area_dm2", "Write the area of the face, or the diameter of the disc below.")
        elif face is not None and face <= 0 and "face_area_dm2" not in self.errors:
            self.add_error("face_area_dm2", "An area is more than zero: current and thickness are reckoned from it.")
        elif face and whole is not None and whole < face:
            self.add_error(
                "total_area_dm2", "The whole area includes the face, so it cannot be smaller: add flange and wires."
            )
