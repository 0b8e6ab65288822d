"""What is added to a condition report after its signature: kept apart from it, under a name and a date of its own."""

from django.db import models

from .base import Signed, Tracked
from .condition import ConditionReport


class Addendum(Tracked, Signed):
    """The signed text stays as it is; this stands beneath it."""

    report = models.ForeignKey(ConditionReport, models.CASCADE, related_name="addenda")
    words = models.TextField("what is added, and why it comes later")
    photos = models.ManyToManyField("records.Photo", blank=True, related_name="addenda")

    class Meta:
        ordering = ["signed_at", "id"]
        verbose_name_plural = "addenda"

    def __str__(self) -> str:
        return f"Addendum to {self.report.number}"

    def get_absolute_url(self) -> str:
        return f"{self.report.get_absolute_url()}#added"
