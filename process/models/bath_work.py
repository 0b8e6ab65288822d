"""What is done to a bath besides adding to it, and the anodes that hang in it with their weighings."""

import uuid

from django.db import models
from django.db.models import Q

from records.models import Strikable, Tracked

from .baths import Bath


class BathService(Strikable):
    """One piece of work at the bath; the ledger counts from the last of its kind."""

    class Kind(models.TextChoices):
        FILTER = "filter", "filter changed"
        BAGS = "bags", "anode bags changed"
        CARBON = "carbon", "treated with carbon"
        LEVEL = "level", "level read"
        TOP_UP = "top_up", "filled up with water"
        DILUTION = "dilution", "bath taken out, water put in"
        DRAG_OUT = "drag_out", "carried out or spilt"
        SLUDGE = "sludge", "sludge taken out"
        OTHER = "other", "something else"

    bath = models.ForeignKey(Bath, models.PROTECT, related_name="services")
    token = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    kind = models.CharField("what was done", max_length=20, choices=Kind)
    done_at = models.DateTimeField("time")
    volume_l = models.FloatField(
        "volume", null=True, blank=True, help_text="Water put in, bath taken or carried out, or what the bath holds."
    )
    mass_g = models.FloatField("mass", null=True, blank=True, help_text="Of the sludge, dried.")
    lot = models.CharField("lot or cartridge", max_length=80, blank=True)
    done_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    note = models.CharField(max_length=300, blank=True)

    class Meta:
        ordering = ["-done_at", "-id"]
        indexes = [models.Index(fields=["bath", "done_at"])]

    def __str__(self) -> str:
        return f"{self.get_kind_display()}, {self.bath.number}"

    def get_absolute_url(self) -> str:
        return f"{self.bath.get_absolute_url()}#services"


class Anode(Tracked):
    bath = models.ForeignKey(Bath, models.PROTECT, related_name="anode_rows")
    label = models.CharField("as it is called", max_length=40)
    metal = models.CharField("metal", max_length=200, blank=True, help_text="“phosphorised copper, 0.05 % P”")
    area_dm2 = models.FloatField("area in the bath", null=True, blank=True)
    is_bagged = models.BooleanField("in a bag", default=True)
    hung_on = models.DateField("hung on", null=True, blank=True)
    removed_on = models.DateField("taken out on", null=True, blank=True)
    note = models.CharField(max_length=300, blank=True)

    class Meta:
        ordering = ["label"]
        constraints = [
            models.UniqueConstraint(
                fields=["bath", "label"], name="anode_once", violation_error_message="An anode is called so already."
            ),
            models.CheckConstraint(
                condition=Q(removed_on__isnull=True) | Q(hung_on__isnull=True) | Q(removed_on__gte=models.F("hung_on")),
                name="anode_hung_before_removed",
                violation_error_message="It was taken out before it was hung: look at the two days again.",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.label} of {self.bath.number}"

    def get_absolute_url(self) -> str:
        return f"{self.bath.get_absolute_url()}#anodes"


class AnodeWeighing(Strikable):
    anode = models.ForeignKey(Anode, models.PROTECT, related_name="weighings")
    token = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    weighed_at = models.DateTimeField("time")
    mass_g = models.FloatField("mass", help_text="Rinsed, dried, without its bag and hook.")
    weighed_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    note = models.CharField(max_length=300, blank=True)

    class Meta:
        ordering = ["weighed_at", "id"]

    def __str__(self) -> str:
        return f"{self.anode.label}, {self.mass_g:g} g"

    def get_absolute_url(self) -> str:
        return self.anode.get_absolute_url()
