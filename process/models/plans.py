"""The steps of a run's ramp, the power units that feed it, and what it all costs."""

from django.db import models
from django.db.models import Q
from django.urls import reverse

from records.clock import day_words
from records.models import Tracked


class RampStep(Tracked):
    """One step: a density or a current, for so long; the last, without a time, until the charge is reached."""

    run = models.ForeignKey("process.Run", models.CASCADE, related_name="ramp_steps")
    order_count = models.PositiveSmallIntegerField("order")
    words = models.CharField("what it is for", max_length=80, blank=True)
    current_density_a_dm2 = models.FloatField("current density", null=True, blank=True)
    current_a = models.FloatField("or current", null=True, blank=True)
    time_h = models.FloatField("for", null=True, blank=True, help_text="Empty: until the charge is reached.")

    class Meta:
        ordering = ["run", "order_count", "id"]
        constraints = [
            models.CheckConstraint(
                condition=Q(current_density_a_dm2__isnull=True) ^ Q(current_a__isnull=True),
                name="ramp_step_density_or_current",
                violation_error_message="Give a step its current density or its current, one of the two.",
            ),
        ]

    def __str__(self) -> str:
        return f"step {self.order_count} of {self.run.number}"


class PowerUnit(Tracked):
    class AfterFailure(models.TextChoices):
        OFF = "off", "stays off"
        RESUMES = "resumes", "resumes by itself"
        UNKNOWN = "unknown", "not known"

    number = models.CharField(max_length=40, unique=True)
    name = models.CharField(max_length=200, blank=True)
    rated_a = models.FloatField("rated current")
    rated_v = models.FloatField("rated voltage")
    resolution_a = models.FloatField("smallest step of current", null=True, blank=True)
    efficiency_pct = models.FloatField("efficiency from the wall", default=70)
    meter_checked_on = models.DateField("meter checked on", null=True, blank=True)
    polarity = models.CharField("polarity", max_length=200, blank=True, help_text="How it is marked, and when checked.")
    after_failure = models.CharField(
        "after a power failure it", max_length=20, choices=AfterFailure, default=AfterFailure.UNKNOWN
    )
    note = models.TextField(blank=True)
    retired_on = models.DateField(null=True, blank=True)

    class Meta:
        ordering = ["number"]

    def __str__(self) -> str:
        return f"{self.number} {self.name}".strip()

    def get_absolute_url(self) -> str:
        return reverse("power_unit_list")


class PriceList(Tracked):
    """Prices from a day on, for one metal; a run is reckoned with those that held when it was planned."""

    valid_from = models.DateField("from")
    ion = models.CharField("metal", max_length=8, default="Cu2+")
    currency = models.CharField(max_length=12, default="EUR")
    labour_money_h = models.FloatField("labour")
    metal_money_kg = models.FloatField("metal")
    energy_money_kwh = models.FloatField("energy")
    bath_money = models.FloatField("making up a bath", default=0)
    bath_life_ah = models.FloatField("charge that a bath lives", default=6000)
    failure_pct = models.FloatField("runs that fail", default=10)
    note = models.TextField(blank=True)

    class Meta:
        ordering = ["-valid_from", "-id"]

    def __str__(self) -> str:
        return f"prices from {day_words(self.valid_from)}"

    def get_absolute_url(self) -> str:
        return reverse("price_list")
