"""The scale of a photograph and what was measured on it, in pixels of the upright full-size picture."""

from django.core.validators import MinValueValidator
from django.db import models

from records import clock

from .base import Tracked
from .striking import Strikable


class PhotoScale(Tracked):
    photo = models.OneToOneField("records.Photo", models.CASCADE, related_name="scale")
    # [[x, y], [x, y]]: the two ends of the known length.
    points = models.JSONField("two ends")
    length_mm = models.FloatField("length between them")
    pointing_px_count = models.PositiveSmallIntegerField(
        "each point sits within ± pixels",
        validators=[MinValueValidator(1)],
        help_text="Of the full-size picture; a point set on a screen is rarely better.",
    )
    placed_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=models.Q(length_mm__gt=0), name="photo_scale_above_nothing",
                violation_error_message="Write a length above nothing.",
            )
        ]  # fmt: skip

    def __str__(self) -> str:
        return f"scale of {self.photo}"


class PhotoMeasure(Strikable):
    class Kind(models.TextChoices):
        DISTANCE = "distance", "distance"
        AREA = "area", "area"

    photo = models.ForeignKey("records.Photo", models.CASCADE, related_name="measures")
    kind = models.CharField(max_length=10, choices=Kind)
    points = models.JSONField()
    what = models.CharField("what is measured", max_length=120)
    measured_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    measured_at = models.DateTimeField(default=clock.now, editable=False)

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        return self.what
