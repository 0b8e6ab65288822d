"""Cores: positive bodies that stay inside under the metal."""

from django.db import models

from records.models import Tracked


class Core(Tracked):
    item = models.OneToOneField("records.Item", models.PROTECT, primary_key=True, related_name="core")
    pull = models.OneToOneField("process.Pull", models.PROTECT, related_name="core", verbose_name="cast in")
    material = models.CharField(max_length=200)
    linear_change_pct = models.FloatField("linear change on setting", null=True, blank=True)
    armature = models.CharField(max_length=200, blank=True)
    cast_on = models.DateField()
    dry_mass_g = models.FloatField("dry mass, constant", null=True, blank=True)
    sealed_mass_g = models.FloatField("mass after waterproofing", null=True, blank=True)
    sealing = models.CharField("waterproofed with", max_length=200, blank=True)
    leak_gain_g = models.FloatField("gain in the leak test", null=True, blank=True)
    ready_mass_g = models.FloatField("mass ready for the bath", null=True, blank=True)

    class Meta:
        ordering = ["item__number"]

    def __str__(self) -> str:
        return self.item.number
