"""Condition reports: an occasion, an examiner, and findings whose severity and stability are never merged."""

from django.db import models
from django.db.models import Exists, OuterRef, Q, Subquery
from django.urls import reverse

from .base import Signed, Tracked, TrackedQuerySet
from .photos import Photo
from .vocabulary import Term


class Grade(models.IntegerChoices):
    NONE = 0, "0 no symptoms"
    MINOR = 1, "1 minor"
    MODERATE = 2, "2 moderate"
    MAJOR = 3, "3 major"


class Urgency(models.IntegerChoices):
    NONE = 0, "0 none: next routine survey"
    YEARS = 1, "1 within years"
    MONTHS = 2, "2 within 12 months"
    WEEKS = 3, "3 immediate or within weeks"


class ConditionReportQuerySet(TrackedQuerySet):
    def pictured(self) -> "ConditionReportQuerySet":
        """`first_picture_at`: when the earliest dated photograph of it or of its addenda was taken."""
        mine = Q(condition_reports=OuterRef("pk")) | Q(addenda__report=OuterRef("pk"))
        photos = Photo.objects.filter(mine)
        first = photos.filter(taken_at__isnull=False).order_by("taken_at").values("taken_at")[:1]
        return self.annotate(has_pictures=Exists(photos), first_picture_at=Subquery(first))


class ConditionReport(Tracked, Signed):
    class Occasion(models.TextChoices):
        ACQUISITION = "acquisition", "acquisition"
        BEFORE = "before", "before moulding"
        AFTER = "after", "after moulding"
        ACCEPTANCE = "acceptance", "acceptance of a copy"
        LOAN_OUT = "loan_out", "loan out"
        LOAN_IN = "loan_in", "loan in"
        SURVEY = "survey", "survey"
        INCIDENT = "incident", "incident"

    class Change(models.TextChoices):
        NO_CHANGE = "no_change", "no change observed"
        CHANGED = "changed", "changed"

    number = models.CharField(max_length=40, unique=True)
    item = models.ForeignKey("records.Item", models.PROTECT, related_name="condition_reports")
    commission = models.ForeignKey(
        "records.Commission", models.PROTECT, null=True, blank=True, related_name="condition_reports"
    )
    occasion = models.CharField(max_length=20, choices=Occasion)
    examined_on = models.DateField()
    examiner = models.ForeignKey("records.Party", models.PROTECT, related_name="+")
    examined_at_place = models.CharField("place of examination", max_length=200, blank=True)
    light = models.CharField("light used", max_length=200)
    aids = models.CharField("magnification and other aids", max_length=200, blank=True)
    structure = models.TextField("materials and structure as seen", blank=True)
    summary = models.TextField(blank=True)
    mass_g = models.FloatField("mass on the day", null=True, blank=True)

    grade = models.PositiveSmallIntegerField(choices=Grade, null=True, blank=True)
    grade_reason = models.CharField("reason, if not the worst finding", max_length=300, blank=True)
    stability = models.CharField(max_length=20, choices=Term.Stability, default=Term.Stability.NOT_ASSESSED)
    previous = models.ForeignKey(
        "self", models.PROTECT, null=True, blank=True, related_name="next", verbose_name="compared with"
    )
    change = models.CharField("statement", max_length=20, choices=Change, blank=True)
    change_words = models.TextField("what changed", blank=True)
    not_seen = models.TextField("not seen", blank=True, help_text="What could not be examined, and why.")
    tests = models.TextField(
        blank=True, help_text="Loose material on white tissue, pin test of gilding, damp pH: place and result."
    )
    restrictions = models.TextField(blank=True)
    recommendation = models.TextField(blank=True)
    photos = models.ManyToManyField("records.Photo", blank=True, related_name="condition_reports")

    objects = ConditionReportQuerySet.as_manager()

    class Meta:
        ordering = ["-examined_on", "-number"]

    def get_absolute_url(self) -> str:
        return reverse("condition", args=[self.number])

    def __str__(self) -> str:
        return f"{self.number} {self.get_occasion_display()}"

    @property
    def worst_severity(self) -> int:
        return max((finding.severity for finding in self.findings.all()), default=0)

    @property
    def overall_grade(self) -> int:
        """The worst finding, unless a person set another grade with a reason."""
        return self.worst_severity if self.grade is None else self.grade


class Finding(Tracked):
    class Comparison(models.TextChoices):
        NEW = "new", "new"
        WORSE = "worse", "worse"
        SAME = "same", "same"
        BETTER = "better", "better"
        TREATED = "treated", "treated"
        NOT_REEXAMINED = "not_reexamined", "not re-examined"

    report = models.ForeignKey(ConditionReport, models.CASCADE, related_name="findings")
    position_count = models.PositiveSmallIntegerField("no.", default=1, editable=False)
    term = models.ForeignKey(Term, models.PROTECT, related_name="+", limit_choices_to={"scheme": Term.Scheme.FINDING})
    layer = models.CharField("material layer", max_length=80, blank=True)
    location = models.CharField(max_length=160, help_text="Side and clock position, zone or named point.")
    extent = models.CharField(max_length=120, blank=True, help_text="Count, size in mm or share of the face.")
    severity = models.PositiveSmallIntegerField(choices=[c for c in Grade.choices if c[0]], default=1)
    stability = models.CharField(max_length=20, choices=Term.Stability, default=Term.Stability.NOT_ASSESSED)
    urgency = models.PositiveSmallIntegerField(choices=Urgency, default=Urgency.NONE)
    comparison = models.CharField("since the last report", max_length=20, choices=Comparison, blank=True)
    action = models.CharField(max_length=200, blank=True)
    note = models.TextField(blank=True)
    first_seen_on = models.DateField(null=True, blank=True)
    photo = models.ForeignKey("records.Photo", models.PROTECT, null=True, blank=True, related_name="findings")

    class Meta:
        ordering = ["position_count", "id"]

    def get_absolute_url(self) -> str:
        return f"{self.report.get_absolute_url()}#finding-{self.position_count}"

    def __str__(self) -> str:
        return f"{self.term}, {self.location}"
