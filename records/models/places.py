"""Where things are kept."""

from django.db import models
from django.urls import reverse

from .base import Tracked


class Place(Tracked):
    name = models.CharField(max_length=200, unique=True)
    within = models.ForeignKey("self", models.PROTECT, null=True, blank=True, related_name="parts")
    note = models.TextField(blank=True)

    class Meta:
        ordering = ["name"]

    def get_absolute_url(self) -> str:
        return reverse("place", args=[self.pk])

    def __str__(self) -> str:
        return self.name
