"""A commission as a file: each time that it was closed or opened again, by whom and why."""

from django.db import models

from records.clock import day_words

from .base import Tracked


class FileStep(Tracked):
    class Kind(models.TextChoices):
        CLOSED = "closed", "closed"
        REOPENED = "reopened", "opened again"

    class Outcome(models.TextChoices):
        FULFILLED = "fulfilled", "fulfilled"
        WITHDRAWN = "withdrawn", "withdrawn by the requester"
        REFUSED = "refused", "refused by the museum or the owner"

    commission = models.ForeignKey("records.Commission", models.PROTECT, related_name="file_steps")
    kind = models.CharField(max_length=20, choices=Kind)
    outcome = models.CharField("closed as", max_length=20, choices=Outcome, blank=True)
    happened_on = models.DateField()
    person = models.ForeignKey("records.Party", models.PROTECT, related_name="+")
    role = models.CharField("in the role of", max_length=20)
    words = models.TextField("reason", blank=True)

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        return f"{self.commission} {self.get_kind_display()}, {day_words(self.happened_on)}"
