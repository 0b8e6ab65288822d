"""Baths: limits, analyses and additions."""

from django.db import models
from django.urls import reverse

from records.models import Strikable, Tracked


class Constituent(models.TextChoices):
    COPPER_SULPHATE = "copper_sulphate", "copper sulphate pentahydrate"
    SULPHURIC_ACID = "sulphuric_acid", "sulphuric acid"
    CHLORIDE = "chloride", "chloride"


class Bath(Tracked):
    number = models.CharField(max_length=40, unique=True)
    name = models.CharField(max_length=200)
    ion = models.CharField("metal", max_length=8, default="Cu2+")
    volume_l = models.FloatField("volume at the mark")
    made_up_on = models.DateField(null=True, blank=True)
    opening_charge_ah = models.FloatField("charge passed before this record", default=0)
    opening_on = models.DateField("ledger opened on", null=True, blank=True)
    temperature_target_degc = models.FloatField("temperature", default=22)
    temperature_warn_low_degc = models.FloatField("temperature, look below", default=18)
    temperature_warn_high_degc = models.FloatField("temperature, look above", default=28)
    analysis_valid_days_count = models.PositiveSmallIntegerField("an analysis holds for so many days", default=30)
    analysis_valid_ah_l = models.FloatField("or until this charge per litre", default=10)
    conductivity_ms_cm = models.FloatField("conductivity, measured", null=True, blank=True)
    place = models.ForeignKey("records.Place", models.PROTECT, null=True, blank=True, related_name="baths")
    anodes = models.TextField(blank=True)
    cautions = models.TextField(blank=True)
    retired_on = models.DateField(null=True, blank=True)

    class Meta:
        ordering = ["number"]

    def get_absolute_url(self) -> str:
        return reverse("bath", args=[self.number])

    def __str__(self) -> str:
        return f"{self.number} {self.name}"


class BathLimit(Tracked):
    """Target, warning and stop for one constituent."""

    bath = models.ForeignKey(Bath, models.CASCADE, related_name="limits")
    constituent = models.CharField(max_length=20, choices=Constituent)
    target_g_l = models.FloatField("target", null=True, blank=True)
    warn_low_g_l = models.FloatField("look below", null=True, blank=True)
    warn_high_g_l = models.FloatField("look above", null=True, blank=True)
    stop_low_g_l = models.FloatField("stop below", null=True, blank=True)
    stop_high_g_l = models.FloatField("stop above", null=True, blank=True)

    class Meta:
        ordering = ["id"]
        constraints = [models.UniqueConstraint(fields=["bath", "constituent"], name="bath_limit_once")]

    def __str__(self) -> str:
        return f"{self.bath.number} {self.get_constituent_display()}"


class BathAnalysis(Strikable):
    class CopperMethod(models.TextChoices):
        EDTA = "edta", "EDTA"
        THIOSULPHATE = "thiosulphate", "iodide and thiosulphate"

    class Modulus(models.TextChoices):
        """Which Baumé scale: 24 °Bé mean another density on each."""

        AT_60_F = "145", "145, at 60 °F"
        AT_15_C = "144.3", "144.3, at 15 °C"
        TRADE = "146", "146, trade"

    class Decision(models.TextChoices):
        IN_LIMITS = "in_limits", "in limits"
        CORRECT = "correct", "correct"
        STOP = "stop", "stop work"

    number = models.CharField(max_length=40, unique=True)
    bath = models.ForeignKey(Bath, models.PROTECT, related_name="analyses")
    sampled_at = models.DateTimeField()
    analyst = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    volume_now_l = models.FloatField(
        "level when sampled", null=True, blank=True, help_text="Left empty: at the mark, as it should be."
    )
    copper_method = models.CharField("copper: titrated with", max_length=20, choices=CopperMethod, blank=True)
    copper_titrant_ml = models.FloatField("copper: titrant used", null=True, blank=True)
    copper_titrant_mol_l = models.FloatField("copper: titrant strength", null=True, blank=True, default=0.1)
    copper_sample_ml = models.FloatField("copper: sample", null=True, blank=True, default=1)
    copper_taken_ml = models.FloatField("copper: bath taken into a flask", null=True, blank=True)
    copper_flask_ml = models.FloatField("copper: flask filled to", null=True, blank=True)
    acid_titrant_ml = models.FloatField("acid: alkali used", null=True, blank=True)
    acid_titrant_mol_l = models.FloatField("acid: alkali strength", null=True, blank=True, default=1)
    acid_sample_ml = models.FloatField("acid: sample", null=True, blank=True, default=10)
    chloride_titrant_ml = models.FloatField("chloride: silver nitrate used", null=True, blank=True)
    chloride_titrant_mol_l = models.FloatField("chloride: silver nitrate strength", null=True, blank=True)
    chloride_sample_ml = models.FloatField("chloride: sample", null=True, blank=True)
    chloride_mg_l = models.FloatField("chloride, by strip or laboratory", null=True, blank=True)
    hydrometer_be = models.FloatField("hydrometer reading", null=True, blank=True)
    hydrometer_modulus = models.CharField("modulus of its scale", max_length=8, choices=Modulus, blank=True)
    density_g_cm3 = models.FloatField("density, by hydrometer or pyknometer", null=True, blank=True)
    temperature_degc = models.FloatField("bath temperature", null=True, blank=True)
    decision = models.CharField(max_length=20, choices=Decision, blank=True)
    note = models.TextField(blank=True)

    class Meta:
        ordering = ["-sampled_at"]
        verbose_name_plural = "bath analyses"

    def __str__(self) -> str:
        return self.number


class BathAddition(Strikable):
    class Kind(models.TextChoices):
        COPPER_SULPHATE = "copper_sulphate", "copper sulphate pentahydrate"
        SULPHURIC_ACID = "sulphuric_acid", "sulphuric acid, concentrated"
        WATER = "water", "water"
        CHLORIDE = "chloride", "chloride"
        ADDITIVE = "additive", "additive"
        OTHER = "other", "something else"

    bath = models.ForeignKey(Bath, models.PROTECT, related_name="additions")
    added_at = models.DateTimeField()
    kind = models.CharField(
        "kind", max_length=20, choices=Kind, blank=True, help_text="Salt and acid count in the bath’s prediction."
    )
    what = models.CharField("substance", max_length=200)
    mass_g = models.FloatField("mass", null=True, blank=True)
    volume_ml = models.FloatField("volume", null=True, blank=True)
    strength_pct = models.FloatField("strength by mass", null=True, blank=True, help_text="Of acid; left empty: 96 %.")
    analysis = models.ForeignKey(
        BathAnalysis, models.PROTECT, null=True, blank=True, related_name="additions", verbose_name="because of"
    )
    lot = models.CharField(max_length=80, blank=True)
    added_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    reason = models.CharField(max_length=300, blank=True)

    class Meta:
        ordering = ["-added_at"]

    def __str__(self) -> str:
        return f"{self.what} to {self.bath.number}"
