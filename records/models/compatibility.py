"""Which mould material a surface bears: the museum's own table."""

from django.db import models

from .base import Tracked


class Compatibility(Tracked):
    class Verdict(models.TextChoices):
        USUAL = "usual", "usual, with care"
        AFTER_TEST = "after_test", "only after a test patch and with a barrier"
        AVOID = "avoid", "avoid"

    surface = models.ForeignKey(
        "records.Term", models.PROTECT, related_name="+", limit_choices_to={"scheme": "surface"}
    )
    material = models.ForeignKey(
        "records.Term", models.PROTECT, related_name="+", limit_choices_to={"scheme": "mould_material"}
    )
    verdict = models.CharField(max_length=20, choices=Verdict)
    words = models.CharField("on which condition, or why", max_length=300, blank=True)
    source = models.CharField("how it is known", max_length=300)
    is_retired = models.BooleanField("no longer asked", default=False)

    class Meta:
        ordering = ["surface__label", "material__label"]
        verbose_name_plural = "compatibilities"
        constraints = [models.UniqueConstraint(fields=["surface", "material"], name="compatibility_once")]

    def __str__(self) -> str:
        return f"{self.surface} and {self.material}"
