"""One measured point of a wall, and where it lies on a picture; a calculated mean cannot be entered here."""

import re
from collections.abc import Iterable
from typing import Any

from django import forms
from django.db.models import Q

from process.forms.asking import AsksUnusual
from process.forms.people import person_field
from process.means import NO_PLACE
from process.models import Shell, ThicknessPoint
from process.ranges import Opinion
from process.summaries.hanging import refuse_before_it_came_out
from records import clock
from records.figures import Figure
from records.forms.base import RecordForm
from records.forms.measurements import not_ahead
from records.forms.pictures import offer_pictures
from records.models import Photo
from records.units import show

MEAN_WORDS = "“{}” is no place: a mean follows from the mass and is shown by itself, marked as calculated."
EQUAL_WORDS = (
    "{} is the mean calculated from the mass ({}), and no other point has been measured. A calculated mean is never "
    "entered as measured."
)


def equals_mean(typed: float, decimals: int, mean: float) -> bool:
    """Whether a number is the mean, to the digits in which it was written."""
    return abs(typed - mean) <= 0.5 * 10**-decimals + 1e-9


def decimals_in_mm(text: str, unit: str) -> int:
    """Decimals of a number as written, in millimetres; at least two, as instruments show them."""
    found = re.search(r"[.,](\d+)", text)
    written = len(found[1]) if found else 0
    return max(written + {"µm": 3, "cm": -1}.get(unit, 0), 2) if unit in ("mm", "µm", "cm") else 2


class ThicknessForm(AsksUnusual, RecordForm):
    class Meta:
        model = ThicknessPoint
        fields = ["place", "thickness_mm", "method", "measured_on", "measured_by", "photo", "outline", "x_pct", "y_pct"]
        ranged: list[str] = []
        judged_as = {"thickness_mm": "planned_thickness_mm"}  # both are millimetres of metal
        evidence_fields: list[str] = []
        groups = [
            ("The point", ["place", "thickness_mm", "method", "measured_on", "measured_by"]),
            ("Where it lies on a picture", ["photo", "outline", "x_pct", "y_pct"]),
        ]
        help_texts = {
            "place": "In words, so that anyone finds it again: “nose”, “field, 3 h”.",
            "thickness_mm": "As the instrument showed it, with its ± if you know it: “0.33 ± 0.02”.",
            "outline": "Where there is no photograph.",
            "x_pct": "From the left edge of the picture, 0 to 100; or touch the picture.",
            "y_pct": "From the top.",
        }

    def __init__(self, *args: Any, user: Any = None, means: Iterable[Figure] = (), **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.means = [each.value for each in means if each.value is not None]
        person_field(self, "measured_by", user)
        offer_pictures(self.fields["photo"], photos_for(self.instance.shell), [self.instance.photo_id])
        self.fields["photo"].empty_label = "no photograph"
        self.fields["outline"].choices = [("", "no outline"), *ThicknessPoint.Outline.choices]
        if self.instance._state.adding:
            self.offer("measured_on", clock.today())

    def clean_measured_on(self):
        return refuse_before_it_came_out(self.instance.shell.cathode, not_ahead(self.cleaned_data["measured_on"]))

    def clean_place(self) -> str:
        place = " ".join(self.cleaned_data["place"].split())
        if NO_PLACE.search(place):
            raise forms.ValidationError(MEAN_WORDS.format(place))
        return place

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        thick = cleaned.get("thickness_mm")
        if thick is not None and thick <= 0 and "thickness_mm" not in self.errors:
            self.add_error(
                "thickness_mm", "A wall is thicker than nothing: measure again, or write a void under first look."
            )
        self._position(cleaned)
        return cleaned

    def _position(self, cleaned: dict[str, Any]) -> None:
        """Two numbers and a picture, or none of them."""
        x, y, photo, outline = (cleaned.get(name) for name in ("x_pct", "y_pct", "photo", "outline"))
        if photo and outline:
            self.add_error("outline", "A photograph is chosen: leave the outline empty.")
        if (x is None) != (y is None) and not self.errors.keys() & {"x_pct", "y_pct"}:
            self.add_error(
                "y_pct" if y is None else "x_pct", "A place on a picture is two numbers: give both, or neither."
            )
        if x is not None and y is not None and not photo and not outline:
            self.add_error("photo", "Say on which photograph or outline the place lies.")

    def opinions(self) -> dict[str, Opinion]:
        """A mean entered as the only point is asked about; beside other points the same number may well be measured."""
        found = super().opinions()
        thick, entered = self.cleaned_data.get("thickness_mm"), self.entered.get("thickness_mm")
        if thick is None or entered is None:
            return found
        decimals = decimals_in_mm(entered.text, entered.unit)
        same = next((mean for mean in self.means if equals_mean(thick, decimals, mean)), None)
        if same is not None and not self._others_differ(decimals, same):
            words = EQUAL_WORDS.format(show(thick, "_mm"), show(same, "_mm", digits=3))
            found["thickness_mm"] = Opinion("unusual", f"{words} Measure at several places, the thin ones first.")
        return found

    def _others_differ(self, decimals: int, mean: float) -> bool:
        others = self.instance.shell.thickness_points.exclude(pk=self.instance.pk)
        return any(not equals_mean(each.thickness_mm, decimals, mean) for each in others)


def photos_for(shell: Shell) -> Any:
    """Photographs of the shell, of its core and of its copy."""
    things = [shell.pk, shell.cathode.core_id, shell.making_up_id]
    return Photo.objects.filter(Q(item__in=[each for each in things if each]))
