"""Photographs: the original file kept byte for byte, and what it shows."""

from django.db import models
from django.urls import reverse

from .base import Tracked


class Photo(Tracked):
    class View(models.TextChoices):
        OBVERSE = "obverse", "obverse or front"
        REVERSE = "reverse", "reverse or back"
        EDGE = "edge", "edge"
        RAKING = "raking", "raking light"
        DETAIL = "detail", "detail"
        MARK = "mark", "mark"
        RIG = "rig", "rig"
        SHEET = "sheet", "bench sheet"
        OVERALL = "overall", "overall"

    item = models.ForeignKey("records.Item", models.PROTECT, null=True, blank=True, related_name="photos")
    view = models.CharField(max_length=20, choices=View, default=View.OVERALL)
    caption = models.CharField(max_length=300, blank=True)
    light = models.CharField(max_length=120, blank=True)
    has_scale = models.BooleanField("scale in the frame", default=False)
    has_colour_target = models.BooleanField("colour target in the frame", default=False)
    taken_at = models.DateTimeField(null=True, blank=True, help_text="From the camera unless a person corrected it.")
    taken_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    rights = models.CharField(max_length=200, blank=True)

    original_name = models.CharField(max_length=255, editable=False)
    path = models.CharField(max_length=200, editable=False)
    sha256 = models.CharField(max_length=64, editable=False, db_index=True)
    media_type = models.CharField(max_length=40, editable=False)
    camera = models.CharField(max_length=120, blank=True, editable=False)
    size_bytes_count = models.PositiveBigIntegerField(editable=False)
    width_px_count = models.PositiveIntegerField(editable=False)
    height_px_count = models.PositiveIntegerField(editable=False)

    class Meta:
        ordering = ["taken_at", "id"]

    def get_absolute_url(self) -> str:
        return reverse("photo", args=[self.pk])

    def __str__(self) -> str:
        return self.caption or self.original_name

    @property
    def is_undated(self) -> bool:
        return self.taken_at is None
