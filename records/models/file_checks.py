"""What a reading of all kept files found: said anew by each reading, so it needs no history of its own."""

from django.db import models

from records import clock


class FileCheck(models.Model):
    started_at = models.DateTimeField(default=clock.now)
    ended_at = models.DateTimeField()
    read_count = models.PositiveIntegerField("files read")
    size_bytes_count = models.PositiveBigIntegerField("bytes read")
    missing_count = models.PositiveIntegerField()
    changed_count = models.PositiveIntegerField()
    unknown_count = models.PositiveIntegerField()
    # The first of each: {"state": "missing", "path": "files/originals/…", "words": "photograph …", "url": "…"}
    found = models.JSONField(default=list)

    class Meta:
        ordering = ["-started_at", "-id"]

    def __str__(self) -> str:
        return f"{self.read_count} files, {self.trouble_words}"

    @property
    def is_sound(self) -> bool:
        return not (self.missing_count or self.changed_count or self.unknown_count)

    @property
    def trouble_words(self) -> str:
        """“2 missing, 1 changed”, or that all is well."""
        counted = [(self.missing_count, "missing"), (self.changed_count, "changed"), (self.unknown_count, "unknown")]
        return ", ".join(f"{count} {word}" for count, word in counted if count) or "each as it came"
