"""Passing a gate without its evidence: never silently."""

from datetime import date

from django.db import models
from django.db.models import F, Q
from django.urls import reverse

from .base import Tracked


class Gate(models.TextChoices):
    """The eight gates (what each needs is computed by records.gates, never set by hand)."""

    PERMISSION = "G1", "permission"
    RISK = "G2", "risk"
    BEFORE = "G3", "condition before"
    AFTER = "G4", "condition after"
    BATH = "G5", "bath"
    MARK = "G6", "mark"
    ACCEPT = "G7", "acceptance"
    IDENTIFY = "G8", "identification"


class Concession(Tracked):
    """A named person lets work go on without the evidence; the limits of use follow the thing for ever.

    It passes the checks that it names, from its day on. One without names was written before checks were named
    and passes its whole gate, as it says.
    """

    number = models.CharField(max_length=40, unique=True)
    gate = models.CharField(max_length=2, choices=Gate)
    check_names = models.JSONField("passes", default=list, blank=True)
    items = models.ManyToManyField("records.Item", blank=True, related_name="concessions", verbose_name="concerns")
    commission = models.ForeignKey(
        "records.Commission", models.PROTECT, null=True, blank=True, related_name="concessions"
    )
    given_on = models.DateField()
    valid_to = models.DateField("holds to", null=True, blank=True)
    given_by = models.ForeignKey("records.Party", models.PROTECT, related_name="+")
    given_role = models.CharField("in the role of", max_length=20)
    reason = models.TextField()
    limits_of_use = models.TextField(
        blank=True, help_text="“Display only, no handling”: printed on every paper of the piece."
    )

    class Meta:
        ordering = ["number"]
        constraints = [
            models.CheckConstraint(
                condition=Q(valid_to__isnull=True) | Q(valid_to__gte=F("given_on")), name="concession_ends_after_given",
                violation_error_message="A concession does not end before the day on which it is given.",
            ),
        ]  # fmt: skip

    def passes(self, check_name: str) -> bool:
        return not self.check_names or check_name in self.check_names

    def in_force_on(self, day: date) -> bool:
        return self.given_on <= day and (self.valid_to is None or day <= self.valid_to)

    @property
    def passes_words(self) -> str:
        """“bath analysed”, “pull left” (bath gate)."""
        if not self.check_names:
            return f"the whole {self.get_gate_display()} gate (written before checks were named)"
        names = ", ".join(f"“{name}”" for name in self.check_names)
        return f"{names} ({self.get_gate_display()} gate)"

    def get_absolute_url(self) -> str:
        return reverse("concession", args=[self.number])

    def __str__(self) -> str:
        return self.number


class UnmetGate(Tracked):
    """Recorded afterwards: something happened although a check was not met. It is shown and printed as such."""

    gate = models.CharField(max_length=2, choices=Gate)
    check_name = models.CharField(max_length=60)
    sentence = models.CharField(max_length=400)
    subject_number = models.CharField(max_length=40, db_index=True)
    items = models.ManyToManyField("records.Item", blank=True, related_name="unmet_gates")
    happened_on = models.DateField()

    class Meta:
        ordering = ["happened_on", "id"]

    def __str__(self) -> str:
        return f"{self.get_gate_display()}: {self.sentence}"
