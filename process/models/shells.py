"""Shells: what grew on a cathode, weighed and measured after separation."""

from django.db import models

from records.models import Strikable, Tracked


class Shell(Tracked):
    class Fate(models.TextChoices):
        KEPT = "kept", "to be made up"
        USED = "used", "made up into a copy"
        SCRAP = "scrap", "scrap, kept as evidence"

    item = models.OneToOneField("records.Item", models.PROTECT, primary_key=True, related_name="shell")
    cathode = models.OneToOneField("process.Cathode", models.PROTECT, related_name="shell")
    separated_on = models.DateField(null=True, blank=True)
    ease = models.CharField("how it came off", max_length=200, blank=True)
    gross_mass_g = models.FloatField(
        "mass of everything deposited", help_text="Dry, with flange, wires and thieves; their tare is taken off."
    )
    weighed_at = models.DateTimeField(null=True, blank=True)
    trimmed_mass_g = models.FloatField("mass after trimming", null=True, blank=True)
    inspection = models.TextField("first look: voids, pits, layers, brittleness", blank=True)
    coupon = models.CharField("flange coupon: number, bends to fracture", max_length=200, blank=True)
    fate = models.CharField(max_length=20, choices=Fate, default=Fate.KEPT)
    making_up = models.ForeignKey(
        "process.MakingUp", models.PROTECT, null=True, blank=True, related_name="shells", editable=False
    )

    class Meta:
        ordering = ["item__number"]

    def __str__(self) -> str:
        return self.item.number

    def get_absolute_url(self) -> str:
        return self.item.get_absolute_url()

    @property
    def is_free(self) -> bool:
        """Kept, and not in a copy yet."""
        return self.fate == self.Fate.KEPT and self.making_up_id is None


class ThicknessPoint(Strikable):
    """A measured thickness at a named point. A calculated mean has no place here."""

    class Method(models.TextChoices):
        MICROMETER = "micrometer", "micrometer"
        SECTION = "section", "section"
        EDDY_CURRENT = "eddy_current", "eddy current"
        ULTRASONIC = "ultrasonic", "ultrasonic"
        XRF = "xrf", "X-ray fluorescence"
        COULOMETRIC = "coulometric", "coulometric"

    shell = models.ForeignKey(Shell, models.CASCADE, related_name="thickness_points")
    place = models.CharField("where", max_length=120)
    thickness_mm = models.FloatField("thickness")
    method = models.CharField(max_length=20, choices=Method)
    measured_on = models.DateField(null=True, blank=True)
    measured_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        return f"{self.place} of {self.shell_id}"
