"""Rules on marks that a museum adds to the recorded ones, and what became of the marks of an original."""

from django.db import models

from records.marking import OFFERED

from .base import Tracked


class MarkRule(Tracked):
    """A rule as data; `records.marking` answers it like those that came with the register."""

    class Evidence(models.TextChoices):
        SEEN = "seen", "its text was read"
        MEMORY = "from memory", "from memory, to be confirmed"

    class Whole(models.TextChoices):
        LONGEST = "longest", "of the longest straight line across the piece"
        THICKNESS = "thickness", "of the finished thickness"

    code = models.CharField(
        "short name", max_length=40, unique=True, help_text="“own.height”; verdicts are named by it."
    )
    asks = models.CharField("what it asks, in a sentence", max_length=300)
    jurisdiction = models.CharField("where it holds", max_length=80, default="this museum")
    citation = models.CharField("where it is written", max_length=200)
    text_version = models.CharField("which version of the text", max_length=80)
    evidence = models.CharField("how sure", max_length=20, choices=Evidence, default=Evidence.SEEN)
    checked_on = models.DateField("text compared on", null=True, blank=True)
    question = models.CharField(
        "the question", max_length=40, choices=sorted(OFFERED.items(), key=lambda pair: pair[1])
    )
    words = models.CharField("words, by commas", max_length=200, blank=True)
    at_least_mm = models.FloatField("at least", null=True, blank=True)
    share_of = models.CharField("or a part", max_length=20, choices=Whole, blank=True)
    share = models.CharField("which part", max_length=9, blank=True, help_text="“1/6”; it counts where it is less.")
    classes = models.CharField("only for these classes of object", max_length=120, blank=True)
    gate = models.BooleanField("a copy is not accepted or labelled until its mark passes", default=False)
    is_retired = models.BooleanField("no longer asked", default=False)

    class Meta:
        ordering = ["code"]

    def __str__(self) -> str:
        return self.code


class RuleCheck(Tracked):
    """When somebody last compared a rule that came with the register with its text in force."""

    code = models.CharField("rule", max_length=40, unique=True, editable=False)
    checked_on = models.DateField("text compared on")
    text_version = models.CharField("which version of the text", max_length=80)
    confirmed = models.BooleanField("the text says what the rule asks", default=True)
    checked_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    note = models.CharField("what differs", max_length=300, blank=True)

    class Meta:
        ordering = ["code"]

    def __str__(self) -> str:
        return self.code


class RuleFacts(Tracked):
    """What rules on marks ask of a piece and nothing else records: its coating, its metal, its hole and corners."""

    item = models.OneToOneField("records.Item", models.CASCADE, related_name="rule_facts")
    coating_um = models.FloatField("thickness of a coating where it is thickest", null=True, blank=True)
    fineness_permille = models.FloatField("fineness of the precious metal", null=True, blank=True)
    moment_uvs_cm = models.FloatField("magnetic moment", null=True, blank=True)
    hole_mm = models.FloatField("width of a central hole", null=True, blank=True)
    corner_count = models.PositiveSmallIntegerField("corners of a polygon", null=True, blank=True)

    class Meta:
        ordering = ["item__number"]
        verbose_name_plural = "rule facts"

    def __str__(self) -> str:
        return f"what rules ask of {self.item.number}"


class SuppressedMark(Tracked):
    """A hallmark or maker's mark of the original: how it was kept off a copy, and the photograph that shows it."""

    class How(models.TextChoices):
        MASKED = "masked", "masked in the mould"
        REMOVED = "removed", "removed from the copy"
        LEFT = "left", "left on the copy"

    copy = models.ForeignKey("records.Item", models.CASCADE, related_name="suppressed_marks")
    mark = models.ForeignKey(
        "records.Mark", models.PROTECT, related_name="suppressions", verbose_name="mark of the original"
    )
    how = models.CharField("what became of it", max_length=20, choices=How)
    reason = models.CharField("how, or why it was left", max_length=300, blank=True)
    done_on = models.DateField(null=True, blank=True)
    done_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    photo = models.ForeignKey("records.Photo", models.PROTECT, null=True, blank=True, related_name="+")

    class Meta:
        ordering = ["id"]
        constraints = [
            models.UniqueConstraint(
                fields=["copy", "mark"], name="suppressed_once",
                violation_error_message="What became of this mark on this copy is recorded already: correct that.",
            )
        ]  # fmt: skip

    def __str__(self) -> str:
        return f"“{self.mark.text}”: {self.get_how_display()}"
