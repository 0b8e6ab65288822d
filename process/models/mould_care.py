"""What a mould consists of, and what its uses did to it."""

import uuid

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models

from records.models import Strikable, Tracked


class MouldPart(Tracked):
    """A piece of a mould that has its own letter and may lie elsewhere: a section, a key, a half of the jacket."""

    mould = models.ForeignKey("process.Mould", models.PROTECT, related_name="parts", editable=False)
    token = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    mark = models.CharField("letter", max_length=12)
    what = models.CharField("what it is", max_length=200)
    material_words = models.CharField("of what", max_length=120, blank=True)
    place = models.ForeignKey(
        "records.Place", models.PROTECT, null=True, blank=True, related_name="+", verbose_name="lies elsewhere, in"
    )

    class Meta:
        ordering = ["mark"]
        constraints = [
            models.UniqueConstraint(
                fields=["mould", "mark"], name="mould_part_once",
                violation_error_message="The mould has a part of this letter: each letter stands for one.",
            )
        ]  # fmt: skip

    def __str__(self) -> str:
        return f"part {self.mark} of {self.mould.item.number}"

    def get_absolute_url(self) -> str:
        return f"{self.mould.get_absolute_url()}#mould"


class MouldWear(Strikable):
    """One feature of wear as it was seen after a use, with its size where it was measured."""

    class Bearing(models.TextChoices):
        OUTSIDE = "outside", "outside what is copied"
        COPIED = "copied", "copied, and made good on the copy"
        ENDS = "ends", "no further pull"

    mould = models.ForeignKey("process.Mould", models.PROTECT, related_name="wear_seen", editable=False)
    token = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    pull = models.ForeignKey(
        "process.Pull", models.PROTECT, null=True, blank=True, related_name="wear_seen", verbose_name="after"
    )
    seen_on = models.DateField("seen on", null=True, blank=True)
    feature = models.TextField("what, and where")
    length_mm = models.FloatField(
        "length", null=True, blank=True, validators=[MinValueValidator(0.001), MaxValueValidator(10_000)]
    )
    bearing = models.CharField("what it means for a copy", max_length=12, choices=Bearing, blank=True)
    seen_by = models.ForeignKey(
        "records.Party", models.PROTECT, null=True, blank=True, related_name="+", verbose_name="seen by"
    )

    class Meta:
        ordering = ["seen_on", "id"]

    def __str__(self) -> str:
        return f"wear of {self.mould.item.number}"

    def get_absolute_url(self) -> str:
        return f"{self.mould.get_absolute_url()}#mould"
