"""Measured thicknesses, point by point, and where each point lies on a picture of the piece."""

from django.db import models
from django.db.models import Q

from records.models import Strikable


class ThicknessPoint(Strikable):
    """A measured thickness at a named point. A calculated mean has no place here."""

    class Method(models.TextChoices):
        MICROMETER = "micrometer", "micrometer"
        SECTION = "section", "section"
        EDDY_CURRENT = "eddy_current", "eddy current"
        ULTRASONIC = "ultrasonic", "ultrasonic"
        XRF = "xrf", "X-ray fluorescence"
        COULOMETRIC = "coulometric", "coulometric"

    class Outline(models.TextChoices):
        DISC = "disc", "disc"
        OVAL = "oval", "oval, upright"
        PLATE = "plate", "plate"

    shell = models.ForeignKey("process.Shell", models.CASCADE, related_name="thickness_points")
    place = models.CharField("where", max_length=120)
    thickness_mm = models.FloatField("thickness")
    method = models.CharField(max_length=20, choices=Method)
    measured_on = models.DateField(null=True, blank=True)
    measured_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    photo = models.ForeignKey(
        "records.Photo", models.PROTECT, null=True, blank=True, related_name="+", verbose_name="on the photograph"
    )
    outline = models.CharField("or on a plain outline", max_length=10, choices=Outline, blank=True)
    x_pct = models.FloatField("from the left", null=True, blank=True)
    y_pct = models.FloatField("from the top", null=True, blank=True)

    class Meta:
        ordering = ["id"]
        constraints = [
            models.CheckConstraint(
                condition=(
                    Q(x_pct__isnull=True, y_pct__isnull=True)
                    | Q(x_pct__isnull=False, y_pct__isnull=False, x_pct__range=(0, 100), y_pct__range=(0, 100))
                ),
                name="thickness_point_inside_its_picture",
                violation_error_message="A place on the picture is two numbers from 0 to 100 %: give both, or neither.",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.place} of {self.shell_id}"

    def get_absolute_url(self) -> str:
        return f"{self.shell.get_absolute_url()}#wall"

    @property
    def is_placed(self) -> bool:
        return self.x_pct is not None and self.y_pct is not None and bool(self.photo_id or self.outline)
