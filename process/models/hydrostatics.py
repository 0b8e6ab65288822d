"""Density by weighing in air and in water."""

import uuid

from django.db import models

from records.models import Strikable


class HydrostaticWeighing(Strikable):
    """Only of sound, closed metal: whatever drinks or holds water would be harmed, and would give a wrong figure."""

    item = models.ForeignKey("records.Item", models.PROTECT, related_name="hydrostatic_weighings")
    token = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    weighed_at = models.DateTimeField("time")
    in_air_g = models.FloatField("balance in air")
    in_water_g = models.FloatField("balance in water", help_text="With the suspension tared, no bubble on the piece.")
    water_temperature_degc = models.FloatField("water temperature")
    air_temperature_degc = models.FloatField("air temperature", null=True, blank=True)
    air_pressure_hpa = models.FloatField("air pressure", null=True, blank=True)
    air_humidity_pct = models.FloatField("relative humidity", null=True, blank=True)
    weighed_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    note = models.CharField("suspension, wetting, what was seen", max_length=300, blank=True)

    class Meta:
        ordering = ["-weighed_at", "-id"]

    def __str__(self) -> str:
        return f"weighing of {self.item.number} in water"

    def get_absolute_url(self) -> str:
        return f"{self.item.get_absolute_url()}#density"
