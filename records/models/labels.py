"""One approved wording for each copy, from which every label is printed."""

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models

from .base import Signed, Tracked


class LabelWording(Tracked, Signed):
    """Signed means approved: only then do labels print from it."""

    class Size(models.TextChoices):
        SMALL = "small", "small, 105 mm wide"
        MEDIUM = "medium", "medium, 148 mm wide"
        LARGE = "large", "large, 170 mm wide"

    class Light(models.TextChoices):
        GOOD = "good", "good light"
        POOR = "poor", "poor light"

    item = models.OneToOneField("records.Item", models.CASCADE, related_name="label")
    kind_of_copy = models.CharField(max_length=80)
    copy_date = models.CharField("date of the copy", max_length=40)
    after = models.CharField("after what", max_length=300)
    body = models.TextField(blank=True)
    answer = models.CharField("why the original is not named", max_length=300, blank=True)
    credit = models.CharField("credit line", max_length=300, blank=True)
    with_edition = models.BooleanField("print which copy of how many authorised it is", default=False)

    size = models.CharField("size of the label", max_length=10, choices=Size, default=Size.MEDIUM)
    light = models.CharField(max_length=10, choices=Light, default=Light.GOOD)
    distance_mm = models.FloatField(
        "read from", default=600.0, validators=[MinValueValidator(100), MaxValueValidator(5000)]
    )

    second_language = models.CharField(max_length=40, blank=True)
    second_heading = models.CharField("heading in it", max_length=120, blank=True)
    second_text = models.TextField("text in it", blank=True)

    is_public = models.BooleanField("strangers who scan the code may read the wording", default=True)
    shown_photo = models.ForeignKey(
        "records.Photo", models.PROTECT, null=True, blank=True, related_name="+", verbose_name="photograph they may see"
    )

    def __str__(self) -> str:
        return self.heading

    @property
    def heading(self) -> str:
        return f"{self.kind_of_copy}, {self.copy_date}"

    class Meta:
        ordering = ["item__number"]
