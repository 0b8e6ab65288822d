"""People, institutions and workshops."""

from django.conf import settings
from django.db import models
from django.urls import reverse

from .base import Tracked


class Party(Tracked):
    class Kind(models.TextChoices):
        PERSON = "person", "person"
        INSTITUTION = "institution", "institution"
        WORKSHOP = "workshop", "workshop or supplier"

    name = models.CharField(max_length=200, unique=True)
    kind = models.CharField(max_length=20, choices=Kind, default=Kind.PERSON)
    initials = models.CharField(max_length=8, blank=True, help_text="As they stand beside a reading.")
    function = models.CharField("what they do", max_length=200, blank=True)
    email = models.EmailField(blank=True)
    address = models.TextField(blank=True)
    user = models.OneToOneField(
        settings.AUTH_USER_MODEL, models.SET_NULL, null=True, blank=True, related_name="party", verbose_name="sign-in"
    )

    class Meta:
        ordering = ["name"]
        verbose_name_plural = "parties"

    def get_absolute_url(self) -> str:
        return reverse("party", args=[self.pk])

    def __str__(self) -> str:
        return self.name
