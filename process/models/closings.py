"""Closing a skinned core: the last rinse, what closes its holes, and the decision with a name to it."""

from django.db import models

from records.clock import day_words
from records.models import Signed, Tracked


class CoreClosing(Tracked, Signed):
    class Decision(models.TextChoices):
        CLOSE = "close", "close it"
        KEEP_DRYING = "keep_drying", "keep drying"
        REJECT = "reject", "reject"

    shell = models.ForeignKey("process.Shell", models.PROTECT, related_name="closings")
    decided_on = models.DateField()
    decision = models.CharField(max_length=20, choices=Decision)
    rinsing = models.CharField("rinsed with", max_length=300, blank=True)
    rinse_ph = models.FloatField("pH of the last rinse", null=True, blank=True)
    neutralising = models.CharField("neutralised with", max_length=300, blank=True)
    sealed_with = models.CharField("holes and back closed with", max_length=300, blank=True)
    sealed_on = models.DateField("closed on", null=True, blank=True)
    vent = models.CharField("vent left open", max_length=300, blank=True)
    pinholes_count = models.PositiveSmallIntegerField("pinholes found", null=True, blank=True)
    pinhole_test = models.CharField("looked for pinholes with", max_length=300, blank=True)
    note = models.TextField(blank=True)

    class Meta:
        ordering = ["decided_on", "id"]

    def __str__(self) -> str:
        return f"{self.get_decision_display()}: {self.shell_id}, {day_words(self.decided_on)}"

    def get_absolute_url(self) -> str:
        return f"{self.shell.get_absolute_url()}#drying"

    @property
    def closes(self) -> bool:
        return self.is_signed and self.decision == self.Decision.CLOSE
