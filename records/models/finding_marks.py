"""Where on a photograph a finding lies, in pixels of the upright full-size picture."""

from django.core.exceptions import ValidationError
from django.db import models

from records.annotating.shapes import LEAST, MOST

from .base import Tracked


class FindingMark(Tracked):
    class Shape(models.TextChoices):
        POINT = "point", "point"
        RECTANGLE = "rectangle", "rectangle"
        POLYGON = "polygon", "outline"
        LINE = "line", "line"

    finding = models.ForeignKey("records.Finding", models.CASCADE, related_name="marks")
    photo = models.ForeignKey("records.Photo", models.PROTECT, related_name="finding_marks")
    shape = models.CharField(max_length=12, choices=Shape)
    # [[x, y], …]: one for a point, two opposite corners of a rectangle, more along a line or round an outline.
    points = models.JSONField()

    class Meta:
        ordering = ["finding", "id"]

    def get_absolute_url(self) -> str:
        return self.finding.get_absolute_url()

    def __str__(self) -> str:
        return f"{self.get_shape_display()} on {self.photo}"

    def clean(self) -> None:
        if self.points is not None and not LEAST[self.shape] <= len(self.points) <= MOST[self.shape]:
            raise ValidationError({"points": f"A {self.get_shape_display()} has another number of points."})
