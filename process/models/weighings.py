"""Weighings of one piece again and again: what is still drying, and what has come to constant mass."""

import uuid

from django.db import models
from django.db.models import Q

from records import clock
from records.models import Strikable


class Weighing(Strikable):
    """One weighing of a series. The form's UUID makes sending it twice harmless.

    The masses of a shell stand on the shell; one that is struck out moves here, so that it is kept and not counted.
    """

    class Kind(models.TextChoices):
        CORE = "core", "core, drying before the bath"
        SKIN = "skin", "skinned core, drying after the bath"
        OTHER = "other", "other"
        SHELL = "shell", "shell, everything deposited"
        TRIMMED = "trimmed", "shell after trimming"
        TARE = "tare", "wires and clips before the bath"

    token = models.UUIDField(default=uuid.uuid4, editable=False)
    item = models.ForeignKey("records.Item", models.PROTECT, related_name="weighings")
    kind = models.CharField(max_length=10, choices=Kind)
    at = models.DateTimeField("weighed", default=clock.now)
    mass_g = models.FloatField("mass")
    balance = models.CharField("which balance", max_length=120, blank=True)
    conditions = models.CharField("how it dried, and the air", max_length=300, blank=True)
    person = models.ForeignKey(
        "records.Party", models.PROTECT, null=True, blank=True, related_name="+", verbose_name="weighed by"
    )

    class Meta:
        ordering = ["at", "id"]
        constraints = [
            models.UniqueConstraint(fields=["item", "token"], name="weighing_once"),
            models.CheckConstraint(
                condition=Q(mass_g__gt=0),
                name="weighing_more_than_nothing",
                violation_error_message="A piece weighs more than nothing: weigh again.",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.mass_g:g} g on {clock.day_words(self.at)}"

    def get_absolute_url(self) -> str:
        return f"{self.item.get_absolute_url()}#drying"
