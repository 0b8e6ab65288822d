"""Hours, bills and estimates: what a copy took of people and money."""

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models
from django.db.models import Q

from records.clock import day_words
from records.models import Tracked

HOURS = [MinValueValidator(0.01), MaxValueValidator(1000)]
MONEY = [MinValueValidator(0), MaxValueValidator(10_000_000)]


class WorkKind(models.TextChoices):
    """In the order of the work."""

    MOULDING = "moulding", "moulding"
    CORE = "core", "core"
    BATH = "bath", "bath, attended"
    MAKING_UP = "making_up", "making-up"
    FINISH = "finish", "finish"
    PAPERS = "papers", "documentation"
    OTHER = "other", "other"


class ForSomething(models.Model):
    """For one copy; or for a run or a commission as a whole, where no single copy can be named."""

    copy = models.ForeignKey(
        "records.Item", models.PROTECT, null=True, blank=True, related_name="%(class)s_rows", editable=False
    )
    run = models.ForeignKey(
        "process.Run", models.PROTECT, null=True, blank=True, related_name="%(class)s_rows", editable=False
    )
    commission = models.ForeignKey(
        "records.Commission", models.PROTECT, null=True, blank=True, related_name="%(class)s_rows", editable=False
    )

    class Meta:
        abstract = True
        constraints = [
            models.CheckConstraint(
                condition=Q(copy__isnull=False) | Q(run__isnull=False) | Q(commission__isnull=False),
                name="%(class)s_is_for_something",
            )
        ]


class WorkHours(ForSomething, Tracked):
    kind = models.CharField("kind of work", max_length=20, choices=WorkKind)
    work_h = models.FloatField("time", validators=HOURS)
    person = models.ForeignKey("records.Party", models.PROTECT, related_name="+")
    done_on = models.DateField("on, or finished on")
    is_rework = models.BooleanField("failed, or done again because it had failed", default=False)
    note = models.CharField(max_length=300, blank=True)

    class Meta(ForSomething.Meta):
        ordering = ["done_on", "id"]
        verbose_name_plural = "work hours"

    def __str__(self) -> str:
        return f"{self.get_kind_display()}, {day_words(self.done_on)}"


class Expense(ForSomething, Tracked):
    """A bill: the plater, a photograph, material that no price list knows."""

    what = models.CharField(max_length=300)
    paid_to = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    spent_on = models.DateField("on")
    sum_money = models.FloatField("sum", validators=MONEY)
    is_rework = models.BooleanField("for something that failed", default=False)

    class Meta(ForSomething.Meta):
        ordering = ["spent_on", "id"]

    def __str__(self) -> str:
        return f"{self.what}, {day_words(self.spent_on)}"


class WorkEstimate(Tracked):
    """Hours of one kind that a commission is planned to take."""

    commission = models.ForeignKey("records.Commission", models.PROTECT, related_name="work_estimates", editable=False)
    kind = models.CharField("kind of work", max_length=20, choices=WorkKind)
    work_h = models.FloatField("time", validators=HOURS)

    class Meta:
        ordering = ["id"]
        constraints = [
            models.UniqueConstraint(
                fields=["commission", "kind"], name="work_estimated_once",
                violation_error_message="This kind of work is estimated already: correct that estimate.",
            )
        ]  # fmt: skip

    def __str__(self) -> str:
        return f"{self.get_kind_display()} for {self.commission}"
