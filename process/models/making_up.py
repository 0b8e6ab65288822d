"""Making-up: shells and fill joined into a copy."""

from django.db import models

from records.models import Tracked


class MakingUp(Tracked):
    class Technique(models.TextChoices):
        JOINED = "joined", "hollow, shells joined"
        UNIFACE = "uniface", "hollow, one face"
        CORE = "core", "skin on a core"
        MATRIX = "matrix", "matrix"

    class Join(models.TextChoices):
        SOLDER = "solder", "soft solder"
        ADHESIVE = "adhesive", "adhesive"
        MECHANICAL = "mechanical", "mechanical"
        NONE = "none", "not joined"

    class Lead(models.TextChoices):
        NO = "no", "no lead"
        YES = "yes", "contains lead"
        UNKNOWN = "unknown", "not known"

    copy = models.OneToOneField("records.Item", models.PROTECT, primary_key=True, related_name="making_up")
    commission = models.ForeignKey("records.Commission", models.PROTECT, null=True, blank=True, related_name="made_up")
    technique = models.CharField(max_length=20, choices=Technique)
    core = models.ForeignKey("process.Core", models.PROTECT, null=True, blank=True, related_name="made_up")
    fill = models.ForeignKey(
        "records.Term", models.PROTECT, null=True, blank=True, related_name="+", limit_choices_to={"scheme": "fill"}
    )
    fill_words = models.CharField("what is inside", max_length=300, blank=True)
    lead_inside = models.CharField("lead inside", max_length=10, choices=Lead)
    fill_density_g_cm3 = models.FloatField("density of the fill", null=True, blank=True)
    fill_mass_g = models.FloatField("mass of the fill", null=True, blank=True)
    fill_temperature_degc = models.FloatField("temperature at the shell", null=True, blank=True)
    join = models.CharField("joined by", max_length=20, choices=Join, default=Join.SOLDER)
    join_words = models.CharField("alloy or adhesive, seam", max_length=300, blank=True)
    die_axis_deg = models.FloatField("die axis", null=True, blank=True)
    made_up_on = models.DateField()
    made_up_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")

    class Meta:
        ordering = ["copy__number"]

    def __str__(self) -> str:
        return f"making-up of {self.copy.number}"
