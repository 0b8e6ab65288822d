"""Anything due by a date."""

from django.db import models
from django.db.models import Q

from records.clock import day_words

from .base import Tracked, TrackedQuerySet


class DutyQuerySet(TrackedQuerySet):
    def open(self) -> "DutyQuerySet":
        return self.filter(done_on__isnull=True)


class Duty(Tracked):
    sentence = models.CharField("what is to be done", max_length=300)
    due_on = models.DateField(db_index=True)
    role = models.CharField("for", max_length=20)
    item = models.ForeignKey("records.Item", models.CASCADE, null=True, blank=True, related_name="duties")
    commission = models.ForeignKey("records.Commission", models.CASCADE, null=True, blank=True, related_name="duties")
    consent = models.ForeignKey("records.Consent", models.CASCADE, null=True, blank=True, related_name="duties")
    done_on = models.DateField(null=True, blank=True)
    done_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    done_words = models.CharField("how it was done", max_length=300, blank=True)

    objects = DutyQuerySet.as_manager()

    class Meta:
        ordering = ["due_on", "id"]
        verbose_name_plural = "duties"
        indexes = [models.Index(fields=["role", "due_on"], condition=Q(done_on__isnull=True), name="duty_open_by_role")]

    def __str__(self) -> str:
        return f"{self.sentence} (by {day_words(self.due_on)})"
