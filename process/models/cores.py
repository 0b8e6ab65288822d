"""Cores: positive bodies that stay inside under the metal."""

from django.db import models

from records.models import Tracked


class Core(Tracked):
    item = models.OneToOneField("records.Item", models.PROTECT, primary_key=True, related_name="core")
    pull = models.OneToOneField("process.Pull", models.PROTECT, related_name="core", verbose_name="cast in")
    material = models.CharField("plaster or other material", max_length=200)
    water_plaster_pct = models.FloatField("water to plaster, by mass", null=True, blank=True)
    linear_change_pct = models.FloatField("linear change on setting", null=True, blank=True)
    armature = models.CharField(max_length=200, blank=True)
    armature_place = models.CharField("where the armature lies", max_length=300, blank=True)
    cast_on = models.DateField()
    drying_temperature_degc = models.FloatField("dried at", null=True, blank=True)
    dry_mass_g = models.FloatField("dry mass, constant", null=True, blank=True)
    sealing = models.CharField("waterproofed with", max_length=200, blank=True)
    sealing_temperature_degc = models.FloatField("temperature of the bath of wax or resin", null=True, blank=True)
    sealing_h = models.FloatField("time in it", null=True, blank=True)
    sealed_mass_g = models.FloatField("mass after waterproofing", null=True, blank=True)
    leak_before_g = models.FloatField("leak test: mass before", null=True, blank=True)
    leak_after_g = models.FloatField("leak test: mass after", null=True, blank=True)
    leak_soak_h = models.FloatField("leak test: time in water", null=True, blank=True)
    leak_gain_g = models.FloatField("gain in the leak test", null=True, blank=True)
    wires_g = models.FloatField("mass of the wires", null=True, blank=True)
    ready_mass_g = models.FloatField("mass ready for the bath, weighed", null=True, blank=True)
    metal_stops = models.CharField("where the metal stops", max_length=300, blank=True)
    vents = models.CharField("vents and drain holes", max_length=300, blank=True)
    allowance_mm = models.FloatField("made smaller for the metal by", null=True, blank=True)

    class Meta:
        ordering = ["item__number"]

    def __str__(self) -> str:
        return self.item.number
