"""Throwing power of a bath, from a cell with one anode between a near and a far cathode."""

from django.db import models
from django.db.models import F, Q

from records.clock import day_words
from records.models import Tracked


class ThrowTest(Tracked):
    bath = models.ForeignKey("process.Bath", models.CASCADE, related_name="throw_tests")
    tested_on = models.DateField("tested on")
    near_mm = models.FloatField("anode to the near cathode", default=50)
    far_mm = models.FloatField("anode to the far cathode", default=250)
    near_gain_g = models.FloatField("gain of the near cathode")
    far_gain_g = models.FloatField("gain of the far cathode")
    current_density_a_dm2 = models.FloatField("mean current density", null=True, blank=True)
    temperature_degc = models.FloatField("bath temperature", null=True, blank=True)
    tester = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    note = models.TextField(blank=True)

    class Meta:
        ordering = ["-tested_on", "-id"]
        constraints = [
            models.CheckConstraint(
                condition=Q(near_mm__gt=0, far_mm__gt=F("near_mm"), far_gain_g__gt=0, near_gain_g__gt=0),
                name="throw_test_far_is_farther",
                violation_error_message="The far cathode hangs farther away than the near, and both gain metal.",
            ),
        ]

    def __str__(self) -> str:
        return f"throw test of {self.bath.number}, {day_words(self.tested_on)}"

    def get_absolute_url(self) -> str:
        return f"{self.bath.get_absolute_url()}#throwing"
