"""What a composition asks of whoever stores and handles the piece: the museum's own table."""

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models
from django.urls import reverse

from records.models import Tracked

SHARE = [MinValueValidator(0), MaxValueValidator(100)]


class CareRule(Tracked):
    class Trait(models.TextChoices):
        """What may be inside a piece or on it, the gravest first."""

        LEAD = "lead", "lead inside"
        LEAD_UNKNOWN = "lead_unknown", "lead not ruled out"
        ACID = "acid", "acid solution that may have stayed inside"
        CORE = "core", "plaster core inside"
        SILVER = "silver", "skin of silver"
        GOLD = "gold", "skin of gold"
        RESIN = "resin", "resin filling"
        COAT = "coat", "wax or lacquer"
        UNIFACE = "uniface", "one open shell"

    trait = models.CharField("what is inside or on it", max_length=20, choices=Trait, unique=True, editable=False)
    sentence = models.CharField("what to do, and not to do", max_length=300)
    tag_words = models.CharField("on its tag", max_length=60, blank=True)
    humidity_from_pct = models.FloatField("relative humidity from", null=True, blank=True, validators=SHARE)
    humidity_to_pct = models.FloatField("to", null=True, blank=True, validators=SHARE)
    survey_months_count = models.PositiveSmallIntegerField(
        "looked at again at least every … months", null=True, blank=True,
        validators=[MinValueValidator(1), MaxValueValidator(240)],
    )  # fmt: skip
    source = models.CharField(max_length=300, blank=True)

    class Meta:
        ordering = ["id"]

    def get_absolute_url(self) -> str:
        return reverse("care_rule_list")

    def __str__(self) -> str:
        return self.get_trait_display()
