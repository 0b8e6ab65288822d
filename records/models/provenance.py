"""Where a thing has been and who has had it."""

from django.db import models

from .base import Tracked


class ProvenanceEvent(Tracked):
    item = models.ForeignKey("records.Item", models.CASCADE, related_name="provenance")
    date_words = models.CharField("date", max_length=80)
    date_edtf = models.CharField(max_length=80, blank=True, editable=False)
    date_earliest = models.DateField(null=True, blank=True, editable=False)
    date_latest = models.DateField(null=True, blank=True, editable=False)
    what = models.CharField(max_length=300)
    party = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    source = models.CharField(max_length=300, blank=True)

    class Meta:
        ordering = ["date_earliest", "id"]

    def __str__(self) -> str:
        return f"{self.date_words}: {self.what}"
