"""The end of a copy or a shell: decided, then carried out before eyes and a camera. Its record and number stay."""

from django.db import models
from django.db.models import F, Q
from django.urls import reverse

from .base import Tracked


class Disposal(Tracked):
    class Way(models.TextChoices):
        DESTROYED = "destroyed", "destroyed"
        BATH = "bath", "its metal goes back to the bath"
        RECYCLER = "recycler", "to a licensed recycler, made unusable"

    number = models.CharField(max_length=40, unique=True)
    item = models.OneToOneField("records.Item", models.PROTECT, related_name="disposal", editable=False)
    reason = models.TextField()
    decided_on = models.DateField()
    decided_by = models.ForeignKey("records.Party", models.PROTECT, related_name="+")
    authority = models.CharField("by what authority", max_length=200)
    way = models.CharField("what becomes of it", max_length=20, choices=Way)
    checked = models.BooleanField("mark, certificate and consent were looked up", default=False)

    done_on = models.DateField("carried out on", null=True, blank=True)
    done_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    witness = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    method = models.CharField("how it was made unusable or marked", max_length=300, blank=True)
    kept = models.TextField("parts kept, and parts that go back to the bath", blank=True)
    photo = models.ForeignKey("records.Photo", models.PROTECT, null=True, blank=True, related_name="+")

    class Meta:
        ordering = ["-decided_on", "-number"]
        constraints = [
            models.CheckConstraint(
                condition=Q(done_on__isnull=True) | Q(done_on__gte=F("decided_on")),
                name="disposal_done_after_decided",
                violation_error_message="It was carried out before it was decided: correct one of the two days.",
            )
        ]

    def get_absolute_url(self) -> str:
        return reverse("item", args=[self.item.number])

    def __str__(self) -> str:
        return self.number
