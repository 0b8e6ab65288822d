"""Where the area of a cathode comes from: its parts, each by its own shape and with its own ±."""

from django.db import models
from django.urls import reverse

from records.models import Tracked


class AreaPart(Tracked):
    """A face, a flange, a wire; `area_dm2` is computed from its measures, or typed where no shape fits."""

    class Part(models.TextChoices):
        FACE = "face", "face"
        FLANGE = "flange", "flange"
        WIRES = "wires", "wires"
        THIEF = "thief", "thief"
        OTHER = "other", "other"

    class Shape(models.TextChoices):
        DISC = "disc", "disc with relief"
        PLATE = "plate", "plate or strip"
        CYLINDER = "cylinder", "cylinder or wire"
        CONE = "cone", "cone or ring"
        CAP = "cap", "cap of a sphere"
        PROFILE = "profile", "turned piece"
        FOIL = "foil", "foil, weighed"
        SCAN = "scan", "scan"
        ENTERED = "entered", "area as known"

    cathode = models.ForeignKey("process.Cathode", models.CASCADE, related_name="area_parts")
    part = models.CharField("what it is", max_length=20, choices=Part, default=Part.FACE)
    words = models.CharField("called", max_length=80, blank=True)
    shape = models.CharField(max_length=20, choices=Shape, editable=False)
    diameter_mm = models.FloatField("diameter", null=True, blank=True)
    inner_diameter_mm = models.FloatField("diameter at the top, or inner", null=True, blank=True)
    length_mm = models.FloatField("length", null=True, blank=True)
    width_mm = models.FloatField("width", null=True, blank=True)
    height_mm = models.FloatField("height", null=True, blank=True)
    relief_factor = models.FloatField(null=True, blank=True)
    foil_mass_g = models.FloatField("foil that covered it", null=True, blank=True)
    sample_mass_g = models.FloatField("a sample of that foil weighs", null=True, blank=True)
    sample_area_dm2 = models.FloatField("area of the sample", null=True, blank=True)
    profile = models.TextField("points of the profile", blank=True)
    scan_facts = models.JSONField(default=dict, blank=True, editable=False)
    pieces_count = models.PositiveSmallIntegerField("equal pieces", default=1)
    area_dm2 = models.FloatField("area")
    uncertainty_pct = models.FloatField("known to within")

    class Meta:
        ordering = ["cathode", "id"]

    def __str__(self) -> str:
        return self.words or f"{self.get_part_display()}, {self.get_shape_display()}"

    def get_absolute_url(self) -> str:
        return reverse("cathode_area", args=[self.cathode_id])
