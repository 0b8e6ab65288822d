"""What a plan says beyond thickness and current density: the thinnest place, the power unit, the anodes, the hours."""

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models


class FactorSource(models.TextChoices):
    MEASURED = "measured", "measured: throw test of the bath"
    RULE = "rule", "rule of thumb"
    ESTIMATED = "estimated", "estimated for this piece"


class PlanFields(models.Model):
    """The part of a run that is thought of before it starts."""

    planned_minimum_mm = models.FloatField("least thickness anywhere", null=True, blank=True)
    distribution_factor = models.FloatField(
        "thinnest place over the mean", null=True, blank=True,
        validators=[MinValueValidator(0.01), MaxValueValidator(1)],
        help_text="A share such as 0.5; a groove as deep as wide holds about 0.35.",
    )  # fmt: skip
    distribution_source = models.CharField(
        "that share is", max_length=20, choices=FactorSource, default=FactorSource.RULE, blank=True
    )
    nearest_mm = models.FloatField("anode to the nearest place", null=True, blank=True)
    farthest_mm = models.FloatField("anode to the farthest place", null=True, blank=True)
    planned_voltage_v = models.FloatField("cell voltage expected", null=True, blank=True)
    power_unit = models.ForeignKey(
        "process.PowerUnit", models.PROTECT, null=True, blank=True, related_name="runs", verbose_name="power unit"
    )
    anode_mass_g = models.FloatField("anodes: mass", null=True, blank=True)
    anode_area_dm2 = models.FloatField("anodes: area in the bath", null=True, blank=True)
    attended_h = models.FloatField("hours attended", null=True, blank=True)
    outside_money = models.FloatField("paid outside", null=True, blank=True)

    class Meta:
        abstract = True
