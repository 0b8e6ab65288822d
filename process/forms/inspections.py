"""Inspection of a copy, and the signature that accepts it or does not."""

from typing import Any

from django import forms

from process.forms.asking import AsksUnusual
from process.forms.thickness import MEAN_WORDS, decimals_in_mm, equals_mean
from process.means import NO_PLACE
from process.models import Inspection, ThicknessPoint
from process.ranges import Opinion
from process.services.copies import ACCEPTING, HELD_AS, fitting_concessions
from process.summaries.copies import CopySummary
from process.summaries.copy_parts import means_of
from records import clock
from records.forms.base import RecordForm
from records.forms.lookup import LookupField
from records.forms.measurements import not_ahead
from records.models import Item
from records.units import show

SIZES = ("mass_g", "diameter_mm", "finished_thickness_mm", "thickness_min_mm")
WALL = ["thickness_min_mm", "thickness_method", "thickness_place", "not_measured_reason"]
MASS_ASIDE, SIZE_ASIDE, SAME_AS_POINT_MM = 0.10, 0.01, 0.0051
IS_MEAN = (
    "{} is the mean calculated from the mass, and no such point is on record: a mean is never entered as measured. "
    "Was it measured, enter the point on the shell’s page first, with place and method; or say why none was measured."
)


class InspectionForm(AsksUnusual, RecordForm):
    """A calculated mean has no place here: the methods are those that measure, and the points rule."""

    class Meta:
        model = Inspection
        fields = [
            "inspected_on", "inspector", "mass_g", "diameter_mm", "finished_thickness_mm", *WALL, "look", "decision",
            "concession",
        ]  # fmt: skip
        ranged: list[str] = []
        groups = [
            ("Who and when", ["inspected_on", "inspector"]),
            ("Measured on the finished piece", ["mass_g", "diameter_mm", "finished_thickness_mm", *WALL]),
            ("Seen, and decided", ["look", "decision", "concession"]),
        ]
        widgets = {"look": forms.Textarea({"rows": 4})}
        help_texts = {
            "finished_thickness_mm": "With its filling, as it lies in the hand; the depth of a mark is judged by it.",
            "thickness_place": "Left empty it is the place of the point on record.",
            "thickness_min_mm": "As an instrument showed it. A mean from mass or charge is not a measurement.",
            "not_measured_reason": "“closed before it could be measured”. Either a measured number or a reason.",
            "concession": "Only for “accept with concession”: for the mark or acceptance of this copy or its shells.",
        }

    def __init__(self, *args: Any, summary: CopySummary, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.summary = summary
        self.fields["concession"].queryset = fitting_concessions(self.instance.copy)
        self.fields["concession"].label_from_instance = lambda one: f"{one.number}: {one.reason[:80]}"
        self.fields["thickness_method"].choices = [("", "not measured"), *ThicknessPoint.Method.choices]
        if self.instance._state.adding:
            self.initial["inspected_on"] = self.initial.get("inspected_on") or clock.today()

    def clean_inspected_on(self):
        return not_ahead(self.cleaned_data["inspected_on"])

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        for name in SIZES:
            if cleaned.get(name) is not None and cleaned[name] <= 0:
                self.add_error(name, "A measured size is more than nought: measure again.")
        self._wall(cleaned)
        accepted_so = cleaned.get("decision") == Inspection.Decision.CONCESSION
        if accepted_so and not cleaned.get("concession"):
            self.add_error(
                "concession", "An acceptance with concession names the concession: choose it, or have it written first."
            )
        if cleaned.get("concession") and not accepted_so and cleaned.get("decision"):
            self.add_error("decision", "A concession is named: the decision is then “accept with concession”.")
        made_up, day = self.summary.making_up.made_up_on, cleaned.get("inspected_on")
        if day and day < made_up:
            self.add_error("inspected_on", f"The copy was made up on {made_up}: it was inspected later.")
        return cleaned

    def _wall(self, cleaned: dict[str, Any]) -> None:
        """Measured with a method, or not measured with a reason; never more than a point that was measured."""
        least, method, place, reason = (cleaned.get(name) for name in WALL)
        if "thickness_min_mm" in self.errors:
            return
        if least is None and not reason:
            self.add_error(
                "thickness_min_mm", "Enter the least measured thickness, or say below why none was measured."
            )
        elif least is not None and reason:
            self.add_error(
                "not_measured_reason", "A thickness is entered: leave the reason empty, or leave the number out."
            )
        elif least is not None and not method:
            self.add_error(
                "thickness_method",
                "Say with which instrument it was measured: a mean from mass or charge is not measured.",
            )
        elif least is None and method:
            self.add_error(
                "thickness_method", "A method without a number: enter what it showed, or choose “not measured”."
            )
        if least is not None:
            self._against_points(least, cleaned.get("finished_thickness_mm"))
            self._its_place(cleaned, least, place)

    def _its_place(self, cleaned: dict[str, Any], least: float, place: str) -> None:
        """The least thickness is that of a point: of one on record, or of one that is named here and is no mean."""
        at = next((row for row in self._points() if abs(row.thickness_mm - least) < SAME_AS_POINT_MM), None)
        if at is not None:
            cleaned["thickness_place"] = place or f"{at.place} of {at.shell.item.number}"
            return
        means = [value for part in self.summary.parts for value in means_of(part)]
        entered = self.entered.get("thickness_min_mm")
        decimals = decimals_in_mm(entered.text, entered.unit) if entered else 2
        if any(equals_mean(least, decimals, mean) for mean in means):
            self.add_error("thickness_min_mm", IS_MEAN.format(show(least, "_mm")))
        elif not place:
            self.add_error(
                "thickness_place", "Say where it was measured: a thickness without a place cannot be found again."
            )
        elif NO_PLACE.search(place):
            self.add_error("thickness_place", MEAN_WORDS.format(place))

    def _points(self) -> list[ThicknessPoint]:
        return [row for part in self.summary.parts for row in part.shell.thickness_points.all()]

    def _against_points(self, least: float, whole: float | None) -> None:
        known = [part.least for part in self.summary.parts if part.least]
        point = min(known, key=lambda figure: figure.value, default=None)
        if point and least > point.value + 1e-9:
            self.add_error(
                "thickness_min_mm",
                f"{show(least, '_mm')} cannot be the least: {show(point.value, '_mm')} was measured ({point.note}). "
                "A mean from mass or charge does not belong here.",
            )
        if whole is not None and least > whole:
            self.add_error("thickness_min_mm", "The wall is thicker than the whole piece: look at both numbers.")

    def opinions(self) -> dict[str, Opinion]:
        """Numbers that lie far from what the parts foretell."""
        found = super().opinions()
        for name, figures, share in (
            ("mass_g", self.summary.mass, MASS_ASIDE),
            ("diameter_mm", self.summary.size, SIZE_ASIDE),
        ):
            told = next((each for each in figures if each.label.endswith("predicted") and each.value), None)
            typed = self.cleaned_data.get(name)
            if told and typed and abs(typed / told.value - 1) > share:
                mine, theirs = show(typed, told.suffix), show(told.value, told.suffix)
                sentence = f"{mine} lies more than {share * 100:.0f} % from the {theirs} that its parts foretell."
                found[name] = Opinion("unusual", sentence)
        return found


class SignForm(forms.Form):
    """How the copy is held from now on; asked only where it is accepted."""

    status = forms.ChoiceField(label="Held as", choices=[])
    place = LookupField("places", required=False, help_text="Where it goes now; left empty, the place stays.")
    version = forms.CharField(required=False, widget=forms.HiddenInput)

    def __init__(self, *args: Any, inspection: Inspection, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["status"].choices = [("", "choose"), *((s.value, s.label) for s in HELD_AS)]
        self.fields["version"].initial = inspection.version
        if inspection.decision not in ACCEPTING:
            del self.fields["status"]

    def held_as(self) -> str:
        return self.cleaned_data.get("status") or Item.Status.WORKSHOP
