"""Is this piece a copy? What was looked for, and what was seen; the sentence it ends in is computed."""

from django.core.exceptions import ValidationError
from django.db import models
from django.urls import reverse

from records.clock import day_words
from records.telling import ANSWERS, SIGNS, Conclusion, conclude

from .base import Tracked


def check_answers(value: object) -> None:
    """Only the signs and the answers that records.telling knows."""
    if not isinstance(value, dict) or set(value) - set(SIGNS) or set(value.values()) - set(ANSWERS):
        raise ValidationError("Answer each sign with seen, not seen or not checked.")


class Examination(Tracked):
    item = models.ForeignKey("records.Item", models.PROTECT, related_name="examinations")
    examined_on = models.DateField()
    examiner = models.ForeignKey("records.Party", models.PROTECT, related_name="+")
    light = models.CharField("light and aids", max_length=200, blank=True)
    answers = models.JSONField(default=dict, validators=[check_answers], editable=False)
    compared_with = models.CharField(
        "set beside", max_length=200, blank=True, help_text="A documented piece, or its photograph."
    )
    note = models.TextField("what was seen, in words", blank=True)

    class Meta:
        ordering = ["-examined_on", "-id"]

    def __str__(self) -> str:
        return f"examination of {self.item.number}, {day_words(self.examined_on)}"

    def get_absolute_url(self) -> str:
        return reverse("examination", args=[self.pk])

    @property
    def ending(self) -> tuple[Conclusion, list[str]]:
        """The sentence and its reasons."""
        return conclude(self.answers)

    @property
    def conclusion(self) -> Conclusion:
        return self.ending[0]

    @property
    def reasons(self) -> list[str]:
        return self.ending[1]
