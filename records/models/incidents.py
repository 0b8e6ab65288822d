"""An incident: what became of a thing in our hands, and when its owner was told."""

from django.db import models
from django.urls import reverse

from .base import Tracked


class Incident(Tracked):
    number = models.CharField(max_length=40, unique=True)
    report = models.OneToOneField("records.ConditionReport", models.PROTECT, related_name="incident")
    treatment = models.TextField("what was done", blank=True)
    owner_told_on = models.DateField("owner told on", null=True, blank=True)
    owner_told_words = models.CharField("who was told, and how", max_length=300, blank=True)
    duty = models.OneToOneField(
        "records.Duty", models.SET_NULL, null=True, blank=True, editable=False, related_name="+"
    )

    class Meta:
        ordering = ["-number"]

    def __str__(self) -> str:
        return self.number

    def get_absolute_url(self) -> str:
        return reverse("incident", args=[self.number])
