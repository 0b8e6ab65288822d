"""How soon a copy is looked at again: the museum's own table."""

from django.core.validators import MinValueValidator
from django.db import models

from .base import Tracked


class SurveyRule(Tracked):
    """For pieces of one history: the first survey after the making, and how often then."""

    history_code = models.CharField(max_length=20, unique=True, editable=False)
    label = models.CharField("pieces", max_length=120)
    first_months_count = models.PositiveSmallIntegerField(
        "first survey after months", validators=[MinValueValidator(1)]
    )
    later_months_count = models.PositiveSmallIntegerField("then every months", validators=[MinValueValidator(1)])
    because = models.CharField("why", max_length=300, blank=True)

    class Meta:
        ordering = ["first_months_count", "label"]

    def __str__(self) -> str:
        return self.label
