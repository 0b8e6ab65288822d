"""Inspection and acceptance of a copy: gate G7, with a signature."""

from django.db import models
from django.db.models import Q

from records.clock import day_words
from records.models import Signed, Tracked

from .thickness import ThicknessPoint


class Inspection(Tracked, Signed):
    class Decision(models.TextChoices):
        ACCEPT = "accept", "accept"
        CONCESSION = "concession", "accept with concession"
        REWORK = "rework", "rework"
        REJECT = "reject", "reject"

    copy = models.ForeignKey("records.Item", models.PROTECT, related_name="inspections")
    inspected_on = models.DateField()
    inspector = models.ForeignKey("records.Party", models.PROTECT, related_name="+")
    mass_g = models.FloatField("mass")
    diameter_mm = models.FloatField("diameter or largest breadth", null=True, blank=True)
    finished_thickness_mm = models.FloatField("thickness of the finished piece", null=True, blank=True)
    thickness_min_mm = models.FloatField("least thickness measured", null=True, blank=True)
    thickness_method = models.CharField("how measured", max_length=20, choices=ThicknessPoint.Method, blank=True)
    thickness_place = models.CharField("where", max_length=120, blank=True)
    not_measured_reason = models.CharField("or not measured, because", max_length=300, blank=True)
    look = models.TextField("seen under the lens: detail, pits, seam, colour", blank=True)
    # Points of the specification that only eyes can answer: {"finish": {"verdict": "pass", "words": "even"}}.
    answers = models.JSONField(default=dict, blank=True, editable=False)
    decision = models.CharField(max_length=20, choices=Decision)
    concession = models.ForeignKey(
        "records.Concession", models.PROTECT, null=True, blank=True, related_name="inspections"
    )

    class Meta:
        ordering = ["-inspected_on", "-id"]
        constraints = [
            models.CheckConstraint(
                condition=Q(thickness_min_mm__isnull=False) | ~Q(not_measured_reason=""),
                name="inspection_thickness_or_reason",
                violation_error_message="Enter the least measured thickness, or say why none was measured.",
            )
        ]

    def __str__(self) -> str:
        return f"inspection of {self.copy.number}, {day_words(self.inspected_on)}"

    @property
    def accepts(self) -> bool:
        return self.is_signed and self.decision in {self.Decision.ACCEPT, self.Decision.CONCESSION}
