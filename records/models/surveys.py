"""How soon a copy is looked at again: the museum's own table, and a date set for one piece by a person."""

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models
from django.urls import reverse

from records import clock

from .base import Tracked

MONTHS = [MinValueValidator(1, "At least one month."), MaxValueValidator(120, "Ten years at most: 120 months.")]


class SurveyRule(Tracked):
    """For pieces of one history: the first survey after the making, and how often then."""

    history_code = models.CharField(max_length=20, unique=True, editable=False)
    label = models.CharField("pieces", max_length=120)
    first_months_count = models.PositiveSmallIntegerField("first survey after months", validators=MONTHS)
    later_months_count = models.PositiveSmallIntegerField("then every months", validators=MONTHS)
    because = models.CharField("why", max_length=300, blank=True)

    class Meta:
        ordering = ["first_months_count", "label"]

    def __str__(self) -> str:
        return self.label


class SurveyDate(Tracked):
    """The next survey of one piece, set by a person; it holds until a report is signed after that."""

    item = models.OneToOneField("records.Item", models.CASCADE, related_name="survey_date")
    due_on = models.DateField("next survey on")
    because = models.CharField("why", max_length=300)
    set_at = models.DateTimeField(default=clock.now, editable=False)

    class Meta:
        ordering = ["due_on", "item"]

    def get_absolute_url(self) -> str:
        return reverse("survey_list")

    def __str__(self) -> str:
        return f"survey of {self.item.number} on {clock.day_words(self.due_on)}"
