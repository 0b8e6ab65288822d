"""Issued papers: a stored PDF is evidence, not a view. Reissue keeps the old one."""

from django.db import models

from .base import Signed, Tracked


class Document(Tracked, Signed):
    kind = models.CharField(max_length=30, db_index=True)
    number = models.CharField(max_length=60, help_text="Number of what the paper is about.")
    edition_count = models.PositiveSmallIntegerField("version", default=1)
    title = models.CharField(max_length=300)
    item = models.ForeignKey("records.Item", models.PROTECT, null=True, blank=True, related_name="documents")
    commission = models.ForeignKey(
        "records.Commission", models.PROTECT, null=True, blank=True, related_name="documents"
    )
    issued_at = models.DateTimeField()
    issued_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    path = models.CharField(max_length=200)
    sha256 = models.CharField(max_length=64)
    size_bytes_count = models.PositiveIntegerField()
    record_sha256 = models.CharField("digest of the attached record", max_length=64)

    class Meta:
        ordering = ["-issued_at", "-id"]
        constraints = [
            models.UniqueConstraint(fields=["kind", "number", "edition_count"], name="document_edition_once")
        ]

    def __str__(self) -> str:
        return f"{self.title}, version {self.edition_count}"
