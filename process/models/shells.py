"""Shells: what grew on a cathode, weighed and measured after separation."""

from django.db import models

from records.models import Tracked


class Shell(Tracked):
    class Fate(models.TextChoices):
        KEPT = "kept", "to be made up"
        USED = "used", "made up into a copy"
        SCRAP = "scrap", "scrap, kept as evidence"

    class Ease(models.TextChoices):
        FALLS = "0", "0: falls off"
        EASY = "1", "1: comes off easily"
        HELD = "2", "2: held, came off whole"
        DAMAGED = "3", "3: mould or shell damaged"

    class Aid(models.TextChoices):
        NONE = "none", "none"
        WATER = "water", "cold water"
        WARM = "warm", "warm water"
        AIR = "air", "air"
        CUT = "cut", "the mould was cut"

    class Edge(models.TextChoices):
        FLUSH = "flush", "flush"
        TURNED = "turned", "turned"
        PROUD = "proud", "left proud"

    item = models.OneToOneField("records.Item", models.PROTECT, primary_key=True, related_name="shell")
    cathode = models.OneToOneField("process.Cathode", models.PROTECT, related_name="shell")
    separated_on = models.DateField(null=True, blank=True)
    ease_grade = models.CharField("ease", max_length=1, choices=Ease, blank=True)
    aid = models.CharField("helped with", max_length=10, choices=Aid, blank=True)
    ease = models.CharField("how it came off", max_length=200, blank=True)
    wires_cut = models.CharField("wires cut, where", max_length=200, blank=True)
    gross_mass_g = models.FloatField(
        "mass of everything deposited",
        null=True,
        help_text="Dry, with flange, wires and thieves; their tare is taken off.",
    )
    weighed_at = models.DateTimeField(null=True, blank=True)
    trimmed_mass_g = models.FloatField("mass after trimming", null=True, blank=True)
    edge_profile = models.CharField("edge after trimming", max_length=10, choices=Edge, blank=True)
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
