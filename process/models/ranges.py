"""The one table of usual and impossible values; the museum edits it."""

from django.db import models

from records.models import Tracked
from records.units import CHOICES, suffix_of


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

    @property
    def unit(self) -> str:
        """The unit that the ending of the field's name says."""
        return CHOICES[suffix_of(self.field) or ""][0].symbol

    @property
    def words(self) -> str:
        """“current density, still bath” for people."""
        name = self.field.removesuffix(suffix_of(self.field) or "").replace("_", " ")
        return name if self.step == self.Step.ANY else f"{name}, {self.get_step_display()}"

    def __str__(self) -> str:
        return f"{self.field} ({self.get_step_display()})"
