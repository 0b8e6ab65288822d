"""Words with neutral definitions, which the museum may edit."""

import re
from collections.abc import Collection

from django.core.exceptions import ValidationError
from django.db import models

from .base import Tracked

_ADDRESS = re.compile(r"(?:https?://|urn:[A-Za-z0-9-]+:)[^\s<>\"{}|\\^`]+")


class Term(Tracked):
    class Scheme(models.TextChoices):
        FINDING = "finding", "condition finding"
        PURPOSE = "purpose", "purpose of a copy"
        SURFACE = "surface", "surface that is moulded"
        MOULD_MATERIAL = "mould_material", "mould material"
        COAT = "coat", "conductive coat"
        FILL = "fill", "fill or backing"
        FINISH = "finish", "finish"
        BARRIER = "barrier", "barrier or release"
        DEFECT = "defect", "defect of a deposit"

    class Stability(models.TextChoices):
        STABLE = "stable", "stable"
        POSSIBLY_ACTIVE = "possibly_active", "possibly active"
        ACTIVE = "active", "active"
        NOT_ASSESSED = "not_assessed", "not assessed"

    class Pattern(models.TextChoices):
        """How a finding of this word is filled on a picture: our own six, told apart in black and white."""

        PLAIN = "plain", "plain outline"
        LOSS = "loss", "loss: crossed lines"
        OPENING = "opening", "opening: upright lines"
        DEPOSIT = "deposit", "something on the surface: dots"
        SHAPE = "shape", "change of shape: level lines"
        SURFACE = "surface", "change of the surface: slanting lines"

    scheme = models.CharField(max_length=20, choices=Scheme)
    group = models.CharField(max_length=60, blank=True, help_text="The kind of object a finding belongs to.")
    label = models.CharField(max_length=120)
    definition = models.TextField(blank=True)
    default_stability = models.CharField(max_length=20, choices=Stability, blank=True)
    pattern = models.CharField("on a picture", max_length=12, choices=Pattern, default=Pattern.PLAIN)
    identifiers = models.TextField(
        blank=True, help_text="Addresses of the same word in published vocabularies, one a line."
    )
    caution = models.CharField(max_length=300, blank=True)
    source = models.CharField(max_length=300, blank=True)
    is_retired = models.BooleanField("no longer offered", default=False)

    class Meta:
        ordering = ["scheme", "group", "label"]
        constraints = [models.UniqueConstraint(fields=["scheme", "group", "label"], name="term_once")]

    def __str__(self) -> str:
        return self.label

    @property
    def addresses(self) -> list[str]:
        """The identifiers one by one."""
        return [line.strip() for line in self.identifiers.splitlines() if line.strip()]

    def clean_fields(self, exclude: Collection[str] | None = None) -> None:
        super().clean_fields(exclude)
        if bad := [address for address in self.addresses if not _ADDRESS.fullmatch(address)]:
            words = f"“{bad[0]}” is no address: write it whole, as http://… or urn:…, one a line."
            raise ValidationError({"identifiers": words})
