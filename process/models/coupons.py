"""Bend tests of a coupon: the best evidence of what a wall is like inside."""

from django.db import models

from records.models import Tracked
from records.units import show

from .shells import Shell


class CouponTest(Tracked):
    class Layers(models.TextChoices):
        NO = "no", "no layers to be seen"
        YES = "yes", "the layers part"

    shell = models.ForeignKey(Shell, models.CASCADE, related_name="coupon_tests")
    number = models.CharField("number of the coupon", max_length=40, unique=True)
    taken_from = models.CharField("cut from", max_length=200, blank=True)
    section_mm = models.FloatField("thickness by section", null=True, blank=True)
    bends_count = models.PositiveIntegerField("bends until it broke or parted", null=True, blank=True)
    layers = models.CharField("layers", max_length=3, choices=Layers, blank=True)
    layers_at_mm = models.FloatField("they part at", null=True, blank=True)
    tested_on = models.DateField("tested", null=True, blank=True)
    tested_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    note = models.TextField(blank=True)

    class Meta:
        ordering = ["number"]

    def __str__(self) -> str:
        return self.number

    def get_absolute_url(self) -> str:
        return f"{self.shell.get_absolute_url()}#coupons"

    @property
    def is_tested(self) -> bool:
        return self.bends_count is not None and bool(self.layers)

    @property
    def words(self) -> str:
        """“the layers part after 3 bends, at 0.19 mm”."""
        if not self.is_tested:
            return "kept, not tested yet"
        bends = f"{self.bends_count} bend{'' if self.bends_count == 1 else 's'}"
        if self.layers == self.Layers.NO:
            return f"{bends} to fracture, no layers to be seen"
        depth = f", at {show(self.layers_at_mm, '_mm')}" if self.layers_at_mm is not None else ""
        return f"the layers part after {bends}{depth}"
