"""One approved wording for each copy, from which every label is printed."""

from django.db import models

from .base import Signed, Tracked


class LabelWording(Tracked, Signed):
    """Signed means approved: only then do labels print from it."""

    item = models.OneToOneField("records.Item", models.CASCADE, related_name="label")
    kind_of_copy = models.CharField(max_length=80)
    copy_date = models.CharField("date of the copy", max_length=40)
    after = models.CharField("after what", max_length=300)
    body = models.TextField(blank=True)
    answer = models.CharField("why the original is not named", max_length=300, blank=True)
    credit = models.CharField("credit line", max_length=300, blank=True)

    def __str__(self) -> str:
        return f"{self.kind_of_copy}, {self.copy_date}"

    class Meta:
        ordering = ["item__number"]
