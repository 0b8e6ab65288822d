"""One part of a cathode's area: the measures that its shape asks for, and how well they are known."""

from typing import Any

from django import forms

from process.forms.asking import AsksUnusual
from process.models import AreaPart
from process.ranges import Opinion, judge
from process.services.areas import keep_part
from process.summaries.areas import USUAL_PCT, ProfileUnreadable, kept_area, one_piece
from records.forms.base import RecordForm

Shape = AreaPart.Shape
MEASURES: dict[str, tuple[str, ...]] = {
    Shape.DISC: ("diameter_mm", "relief_factor"),
    Shape.PLATE: ("length_mm", "width_mm"),
    Shape.CYLINDER: ("diameter_mm", "length_mm"),
    Shape.CONE: ("diameter_mm", "inner_diameter_mm", "height_mm"),
    Shape.CAP: ("diameter_mm", "height_mm"),
    Shape.PROFILE: ("profile",),
    Shape.FOIL: ("foil_mass_g", "sample_mass_g", "sample_area_dm2"),
    Shape.SCAN: (),
    Shape.ENTERED: ("area_dm2",),
}
ORDER = ["diameter_mm", "relief_factor", "inner_diameter_mm", "length_mm", "width_mm", "height_mm", "profile",
         "foil_mass_g", "sample_mass_g", "sample_area_dm2", "area_dm2"]  # fmt: skip
MAY_BE_EMPTY = {"relief_factor", "height_mm", "inner_diameter_mm"}
COMMON = ("part", "words", "pieces_count", "uncertainty_pct")


class AreaForm(AsksUnusual, RecordForm):
    """Shows only what the shape needs; an unnamed ± is that of the method."""

    class Meta:
        model = AreaPart
        fields = [
            "part", "words", "pieces_count", "diameter_mm", "inner_diameter_mm", "length_mm", "width_mm", "height_mm",
            "relief_factor", "foil_mass_g", "sample_mass_g", "sample_area_dm2", "profile", "area_dm2",
            "uncertainty_pct",
        ]  # fmt: skip
        evidence_fields = ["area_dm2"]
        groups = [
            ("Its measures", ["file", "unit", "side", *ORDER]),
            ("What it is", ["part", "words", "pieces_count", "uncertainty_pct"]),
        ]  # fmt: skip
        widgets = {"profile": forms.Textarea({"rows": 8})}
        help_texts = {
            "relief_factor": "Its surface against that of a flat disc: a medal 1.03 to 1.15, ornate work 1.2 to 1.5.",
            "profile": "From top to bottom, each line a radius and a height in mm: 12.5 40",
            "inner_diameter_mm": "Of a whole cone zero; of a flat ring the inner edge, and the height zero.",
            "pieces_count": "Two wires of one size are one part with two pieces.",
            "area_dm2": "Of all pieces together.",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        shape = self.instance.shape
        wanted = {*COMMON, *MEASURES[shape]}
        for name in set(self.fields) & set(self._meta.fields):
            if name not in wanted:
                del self.fields[name]
            elif name in MEASURES[shape]:
                self.fields[name].required = name not in MAY_BE_EMPTY
        self.fields["uncertainty_pct"].required = False
        self.fields["uncertainty_pct"].help_text = f"Empty: {USUAL_PCT[shape]:g} %, as this way is usually known."
        if self.instance._state.adding:
            self.initial["uncertainty_pct"] = self.fields["uncertainty_pct"].initial = None

    def opinions(self) -> dict[str, Opinion]:
        """The area is reckoned before it is asked about, as every area in the bath is."""
        cleaned = self.cleaned_data
        self._fill(cleaned)
        if not self.errors:
            self._reckon(cleaned)
        if self.errors:
            return {}
        typed = self.entered.get("area_dm2")
        known = {"number": typed.number, "unit": typed.unit} if typed else {}
        return {"area": judge("total_area_dm2", cleaned.get("area_dm2") or self.instance.area_dm2, **known)}

    def _fill(self, cleaned: dict[str, Any]) -> None:
        if cleaned.get("uncertainty_pct") is None and "uncertainty_pct" not in self.errors:
            cleaned["uncertainty_pct"] = USUAL_PCT[self.instance.shape]
        for name in ("height_mm", "inner_diameter_mm"):
            if name in self.fields and cleaned.get(name) is None and name not in self.errors:
                cleaned[name] = 0.0
        if not 0 <= (cleaned.get("uncertainty_pct") or 0) <= 100:
            self.add_error("uncertainty_pct", "From 0 to 100 %: more is no knowledge.")
        if (factor := cleaned.get("relief_factor")) is not None and factor < 1:
            self.add_error("relief_factor", "A relief has no less surface than a flat disc: 1 or more, or empty.")
        if not cleaned.get("pieces_count"):
            self.add_error("pieces_count", "At least one piece.")

    def _reckon(self, cleaned: dict[str, Any]) -> None:
        """The area by its formula; a reason where it has none."""
        tried = AreaPart(shape=self.instance.shape, area_dm2=None)
        for name, value in cleaned.items():
            setattr(tried, name, value)
        try:
            area = kept_area(tried)
            reason = one_piece(tried).note
        except ProfileUnreadable as error:
            self.add_error("profile", str(error))
            return
        if not area or area <= 0:
            self.add_error(None, reason or "There is no area in that: look at the measures again.")
        elif "area_dm2" not in self.fields:
            self.instance.area_dm2 = area

    def save(self, commit: bool = True) -> AreaPart:
        return keep_part(part=self.instance)
