"""Two photographs of one thing laid over each other by points that are the same on both."""

from django.db import models
from django.urls import reverse

from .base import Tracked


class PhotoPair(Tracked):
    report = models.ForeignKey("records.ConditionReport", models.CASCADE, related_name="pairs")
    before = models.ForeignKey("records.Photo", models.PROTECT, related_name="+", verbose_name="the earlier one")
    after = models.ForeignKey("records.Photo", models.PROTECT, related_name="+", verbose_name="the later one")
    # [[x, y], …] on each, two or three in the same order; nothing: the pictures are laid edge on edge.
    before_points = models.JSONField("points on the earlier one", default=list, blank=True)
    after_points = models.JSONField("the same points on the later one", default=list, blank=True)

    class Meta:
        ordering = ["id"]
        constraints = [models.UniqueConstraint(fields=["report", "before", "after"], name="photo_pair_once")]

    def get_absolute_url(self) -> str:
        return reverse("photo_pair", args=[self.pk])

    def __str__(self) -> str:
        return f"{self.before} beside {self.after}"
