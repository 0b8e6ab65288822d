"""What went wrong, so that it does not happen twice: defects of shells, and the library of failures."""

from django.db import models
from django.urls import reverse

from records.models import Tracked


class Certainty(models.TextChoices):
    CONFIRMED = "confirmed", "confirmed"
    SUSPECTED = "suspected", "suspected"
    UNKNOWN = "unknown", "unknown"


class Failure(Tracked):
    """A run or shells that failed, why, and what is done differently since."""

    number = models.CharField(max_length=40, unique=True)
    title = models.CharField("in one line", max_length=200)
    happened_on = models.DateField("when it happened")
    run = models.ForeignKey("process.Run", models.PROTECT, null=True, blank=True, related_name="failures")
    shells = models.ManyToManyField("process.Shell", blank=True, related_name="failures")
    what = models.TextField("what was seen")
    cause = models.TextField(blank=True)
    certainty = models.CharField("the cause is", max_length=20, choices=Certainty, default=Certainty.UNKNOWN)
    lesson = models.TextField("what was learned")
    action = models.TextField("what is done differently since", blank=True)
    photos = models.ManyToManyField("records.Photo", blank=True, related_name="failures", verbose_name="photographs")
    recorded_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")

    class Meta:
        ordering = ["-number"]

    def __str__(self) -> str:
        return self.number

    def get_absolute_url(self) -> str:
        return reverse("failure", args=[self.number])


class Defect(Tracked):
    """One defect of a deposit, in the words of the vocabulary."""

    class Stage(models.TextChoices):
        RUN = "run", "in the bath"
        SEPARATION = "separation", "at separation"
        INSPECTION = "inspection", "at inspection"
        SURVEY = "survey", "at a survey"

    class Severity(models.IntegerChoices):
        NONE = 0, "0, none"
        COSMETIC = 1, "1, cosmetic"
        LIMITS_USE = 2, "2, limits use"
        REJECT = 3, "3, reject"

    shell = models.ForeignKey("process.Shell", models.CASCADE, related_name="defects")
    term = models.ForeignKey(
        "records.Term", models.PROTECT, related_name="+", limit_choices_to={"scheme": "defect"}, verbose_name="defect"
    )
    location = models.CharField("where", max_length=200)
    extent = models.CharField(max_length=120, blank=True, help_text="A count, or the share of the face: “6”, “5 %”.")
    severity = models.PositiveSmallIntegerField(choices=Severity, default=Severity.COSMETIC)
    stage = models.CharField("found", max_length=20, choices=Stage)
    found_on = models.DateField("on", null=True, blank=True)
    found_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    photo = models.ForeignKey("records.Photo", models.PROTECT, null=True, blank=True, related_name="+")
    cause = models.CharField(max_length=300, blank=True)
    certainty = models.CharField("the cause is", max_length=20, choices=Certainty, default=Certainty.UNKNOWN)
    action = models.CharField("what was done", max_length=300, blank=True)

    class Meta:
        ordering = ["-severity", "id"]

    def __str__(self) -> str:
        return f"{self.term} of {self.shell_id}"

    def get_absolute_url(self) -> str:
        return f"{self.shell.get_absolute_url()}#defects"
