"""Giving a photograph its scale, and measuring on it."""

from typing import Any

from django import forms

from records.forms.base import RecordForm
from records.forms.points import MOST_POINTS, PointsField
from records.imaging.measuring import crosses_itself
from records.models import Photo, PhotoMeasure, PhotoScale

LINES = "One point a line: pixels across and down, counted from the upper left corner of the full-size picture."
SCREEN_PX = 800  # a picture as it is seen while points are set


class ScaleForm(RecordForm):
    class Meta:
        model = PhotoScale
        fields = ["points", "length_mm", "pointing_px_count", "placed_by"]
        help_texts = {"length_mm": "With its ± where it is known: “40 ± 0.05 mm”."}
        groups = [("", ["points", "length_mm", "pointing_px_count", "placed_by"])]

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        photo = self.instance.photo
        self.fields["points"] = PointsField(size_px=_size(photo), least=2, most=2, label="Two ends", help_text=LINES)
        self.offer("pointing_px_count", max(1, round(photo.width_px_count / SCREEN_PX)))


class MeasureForm(RecordForm):
    class Meta:
        model = PhotoMeasure
        fields = ["what", "points", "measured_by"]
        help_texts = {"what": "“diameter, left to right”, “green spot below the eye”"}
        groups = [("", ["what", "points", "measured_by"])]

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        least = 3 if self._is_area() else 2
        self.fields["points"] = PointsField(
            size_px=_size(self.instance.photo), least=least, most=MOST_POINTS, help_text=LINES,
            label="Outline" if self._is_area() else "Line",
        )  # fmt: skip

    def clean_points(self) -> list[list[float]]:
        points = self.cleaned_data["points"]
        if self._is_area() and crosses_itself(points):
            raise forms.ValidationError("The outline crosses itself, and has no area: set the points round the edge.")
        return points

    def _is_area(self) -> bool:
        return self.instance.kind == PhotoMeasure.Kind.AREA


def _size(photo: Photo) -> tuple[int, int]:
    return photo.width_px_count, photo.height_px_count
