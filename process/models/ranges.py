"""The one table of usual and impossible values; the museum edits it."""

from django.db import models

from records.models import Tracked


class Range(Tracked):
    class Step(models.TextChoices):
        ANY = "any", "any"
        STRIKE = "strike", "strike"
        QUIET = "quiet", "still bath"
        AGITATED = "agitated", "agitated bath"

    field = models.CharField(max_length=60, help_text="Name of the entered number; its ending is the unit of this row.")
    step = models.CharField(max_length=20, choices=Step, default=Step.ANY)
    usual_low = models.FloatField(null=True, blank=True)
    usual_high = models.FloatField(null=True, blank=True)
    possible_low = models.FloatField(null=True, blank=True)
    possible_high = models.FloatField(null=True, blank=True)
    source = models.CharField(max_length=300, blank=True)

    class Meta:
        ordering = ["field", "step"]
        constraints = [models.UniqueConstraint(fields=["field", "step"], name="range_once")]

    def __str__(self) -> str:
        return f"{self.field} ({self.get_step_display()})"
