"""Finish steps: what was done to the surface, here or outside."""

from django.db import models

from records.models import Tracked


class FinishStep(Tracked):
    copy = models.ForeignKey("records.Item", models.CASCADE, related_name="finish_steps")
    finish = models.ForeignKey("records.Term", models.PROTECT, related_name="+", limit_choices_to={"scheme": "finish"})
    words = models.CharField("material class, coats, colour", max_length=300, blank=True)
    thickness_um = models.FloatField("thickness of the skin", null=True, blank=True)
    done_on = models.DateField()
    done_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")

    class Meta:
        ordering = ["done_on", "id"]

    def __str__(self) -> str:
        return f"{self.finish} on {self.copy.number}"
