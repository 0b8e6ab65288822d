"""A length of a mould measured again and again: rubber goes on shrinking after it was accepted."""

import uuid

from django.db import models
from django.db.models import Q

from records.models import Strikable


class MouldGauge(Strikable):
    """One length on the mould beside the same length of the piece it was taken from, at 20 °C."""

    mould = models.ForeignKey("process.Mould", models.PROTECT, related_name="gauges")
    token = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    gauged_on = models.DateField("measured on")
    feature = models.CharField("between which points", max_length=120)
    nominal_mm = models.FloatField("length on the piece")
    measured_mm = models.FloatField("length on the mould")
    temperature_degc = models.FloatField("temperature of the mould", null=True, blank=True)
    gauged_by = models.ForeignKey(
        "records.Party", models.PROTECT, null=True, blank=True, related_name="+", verbose_name="measured by"
    )
    note = models.CharField("instrument, how it lay", max_length=300, blank=True)

    class Meta:
        ordering = ["gauged_on", "id"]
        constraints = [
            models.CheckConstraint(
                condition=Q(nominal_mm__gt=0, measured_mm__gt=0), name="gauged_lengths_above_nothing"
            )
        ]

    def __str__(self) -> str:
        return f"length of {self.mould.item.number}, {self.feature}"

    def get_absolute_url(self) -> str:
        return f"{self.mould.get_absolute_url()}#gauges"
