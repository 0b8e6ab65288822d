"""Marks on a piece: those that say it is a copy, and those it came with."""

from django.db import models

from .base import Tracked


class Mark(Tracked):
    class Purpose(models.TextChoices):
        COPY = "copy", "says that it is a copy"
        MAKER = "maker", "maker or workshop"
        HALLMARK = "hallmark", "hallmark or assay mark"
        OTHER = "other", "other"

    class Face(models.TextChoices):
        OBVERSE = "obverse", "obverse or front"
        REVERSE = "reverse", "reverse"
        RIM = "rim", "rim"
        EDGE = "edge", "edge"
        BACK = "back", "back"
        INSIDE = "inside", "inside"
        UNDERSIDE = "underside", "underside"

    class Method(models.TextChoices):
        MOULD_BORNE = "mould_borne", "let into the mould"
        PUNCH = "punch", "punched"
        ENGRAVED = "engraved", "engraved"
        LASER = "laser", "laser"
        PLATE = "plate", "soldered plate"
        INK = "ink", "ink (temporary)"

    class Technique(models.TextChoices):
        INCUSE = "incuse", "incuse"
        RAISED = "raised", "raised"
        FLAT = "flat", "flat"

    item = models.ForeignKey("records.Item", models.CASCADE, related_name="marks")
    purpose = models.CharField(max_length=20, choices=Purpose, default=Purpose.COPY)
    text = models.CharField("text exactly as it reads", max_length=120)
    face = models.CharField(max_length=20, choices=Face)
    position = models.CharField(max_length=120, blank=True)
    method = models.CharField(max_length=20, choices=Method)
    technique = models.CharField("incuse or raised", max_length=20, choices=Technique, default=Technique.INCUSE)
    letter_height_mm = models.FloatField("letter height", null=True, blank=True)
    copy_word_width_mm = models.FloatField("width of the word COPY", null=True, blank=True)
    depth_mm = models.FloatField("depth", null=True, blank=True)
    is_legible = models.BooleanField("legible without a lens", null=True, blank=True)
    is_sans_serif = models.BooleanField("letters without serifs", null=True, blank=True)
    made_on = models.DateField(null=True, blank=True)
    made_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    witness = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    photo = models.ForeignKey("records.Photo", models.PROTECT, null=True, blank=True, related_name="marks")

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        return f"“{self.text}”, {self.get_face_display()}"

    def save(self, *args, **kwargs) -> None:
        super().save(*args, **kwargs)
        self.item.reindex()

    @property
    def is_permanent(self) -> bool:
        return self.method != self.Method.INK

    @property
    def is_photographed_copy_mark(self) -> bool:
        """What gate G6 asks for: permanent, photographed, and saying that this is a copy."""
        return self.purpose == self.Purpose.COPY and self.is_permanent and self.photo_id is not None
