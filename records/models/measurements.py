"""Measured sizes and weights of a thing, each with its kind of evidence."""

from django.db import models
from django.db.models import Q

from .striking import Strikable

VALUE_FIELDS = ("length_mm", "mass_g", "density_g_cm3", "angle_deg")


def _exactly_one_value() -> Q:
    condition = Q()
    for name in VALUE_FIELDS:
        condition |= Q(**{f"{other}__isnull": other != name for other in VALUE_FIELDS})
    return condition


class Measurement(Strikable):
    class What(models.TextChoices):
        DIAMETER = "diameter", "diameter"
        HEIGHT = "height", "height"
        BREADTH = "breadth", "breadth"
        DEPTH = "depth", "depth"
        THICKNESS = "thickness", "thickness"
        MASS = "mass", "mass"
        DENSITY = "density", "density"
        DIE_AXIS = "die_axis", "die axis"

    item = models.ForeignKey("records.Item", models.CASCADE, related_name="measurements")
    what = models.CharField("dimension", max_length=20, choices=What)
    point = models.CharField(
        "where", max_length=120, blank=True, help_text="The named point, so that it can be found again."
    )
    length_mm = models.FloatField("length", null=True, blank=True)
    mass_g = models.FloatField("mass", null=True, blank=True)
    density_g_cm3 = models.FloatField("density", null=True, blank=True)
    angle_deg = models.FloatField("angle", null=True, blank=True)
    temperature_degc = models.FloatField(
        "temperature of the piece", null=True, blank=True, help_text="Lengths are compared at 20 °C."
    )
    measured_on = models.DateField(null=True, blank=True)
    measured_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    note = models.CharField(max_length=300, blank=True)

    class Meta:
        ordering = ["what", "id"]
        constraints = [models.CheckConstraint(condition=_exactly_one_value(), name="measurement_one_value")]

    def __str__(self) -> str:
        return f"{self.get_what_display()} of {self.item.number}"

    @property
    def value_field(self) -> str:
        """Name of the one column that holds this measurement's number."""
        return next(name for name in VALUE_FIELDS if getattr(self, name) is not None)

    @property
    def value(self) -> float:
        return getattr(self, self.value_field)
