"""Descent: what was transferred to what, and how. Polarity, transfers and generation are computed, never stored."""

from django.db import models
from django.db.models import F, Q

from .base import Tracked


class DescentLink(Tracked):
    class Transfer(models.TextChoices):
        MOULDING = "moulding", "moulded"
        CASTING = "casting", "cast in the mould"
        DEPOSIT = "deposit", "metal deposited in the mould"
        SKIN = "skin", "metal skin on a core"
        MAKING_UP = "making_up", "made up"
        SCAN = "scan", "scanned and printed"
        UNKNOWN = "unknown", "not known"

    source = models.ForeignKey(
        "records.Item", models.PROTECT, null=True, blank=True, related_name="descendants", help_text="Empty: not known."
    )
    source_words = models.CharField("the unknown source in words", max_length=300, blank=True)
    source_across_mm = models.FloatField("its size across, as quoted", null=True, blank=True)
    source_quoted_from = models.CharField("quoted from", max_length=200, blank=True)
    target = models.ForeignKey("records.Item", models.CASCADE, related_name="ancestry")
    transfer = models.CharField(max_length=20, choices=Transfer)
    side = models.CharField(max_length=40, blank=True)
    happened_on = models.DateField(null=True, blank=True)
    note = models.CharField(max_length=300, blank=True)

    class Meta:
        ordering = ["id"]
        constraints = [
            models.UniqueConstraint(
                fields=["source", "target", "transfer", "side"],
                name="descent_link_once",
                violation_error_message="This step of the descent is recorded already.",
            ),
            models.CheckConstraint(
                condition=~Q(source=F("target")),
                name="descent_not_from_itself",
                violation_error_message="A piece cannot descend from itself: choose what it was taken from.",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.source or '?'} → {self.target}"
