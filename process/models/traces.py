"""Logger traces of a run: the file as it came, how it was read, what a person decided, and the figures that follow."""

import uuid

from django.db import models
from django.urls import reverse

from process.tracing.headers import MEANINGS
from records.models import Tracked, TrackedQuerySet

from .runs import Run


class TraceQuerySet(TrackedQuerySet):
    def light(self) -> "TraceQuerySet":
        """Without what only the trace's own page shows."""
        return self.defer("mapping", "findings", "decisions", "cuts", "as_typed").select_related("accepted_by")

    def accepted(self) -> "TraceQuerySet":
        return self.filter(state=Trace.State.ACCEPTED)

    def standing(self) -> "TraceQuerySet":
        return self.exclude(state=Trace.State.WITHDRAWN)


class Trace(Tracked):
    """The samples stay in the file; `findings`, `decisions`, `stretches` and the sums are what rows hold of them."""

    class State(models.TextChoices):
        READING = "reading", "being read"
        FOUND = "found", "to be decided"
        ACCEPTED = "accepted", "accepted"
        WITHDRAWN = "withdrawn", "withdrawn"

    run = models.ForeignKey(Run, models.CASCADE, related_name="traces")
    token = models.UUIDField(default=uuid.uuid4, editable=False)
    state = models.CharField(max_length=20, choices=State, default=State.FOUND, editable=False)
    original_name = models.CharField("file", max_length=255, editable=False)
    path = models.CharField(max_length=200, editable=False)
    sha256 = models.CharField(max_length=64, editable=False, db_index=True)
    size_bytes_count = models.PositiveBigIntegerField(editable=False)
    brought_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")

    mapping = models.JSONField(default=dict, blank=True, editable=False)
    findings = models.JSONField(default=list, blank=True, editable=False)
    decisions = models.JSONField(default=dict, blank=True, editable=False)
    # Stretches of the run, in seconds since 1970, in which another accepted trace rules.
    cuts = models.JSONField(default=list, blank=True, editable=False)
    # process.tracing.Stretch as JSON: zero current, and how it came back.
    stretches = models.JSONField(default=list, blank=True, editable=False)
    engine = models.CharField("reckoned by version", max_length=20, blank=True, editable=False)

    known_ah = models.FloatField("integrated", null=True, editable=False)
    bridged_ah = models.FloatField("bridged over gaps", null=True, editable=False)
    open_ah = models.FloatField("at most in open gaps", null=True, editable=False)
    absolute_ah = models.FloatField("without regard to sign", null=True, editable=False)
    switching_ah = models.FloatField("± of switching moments", null=True, editable=False)
    interval_s = models.FloatField("a sample every", null=True, editable=False)
    energised_s = models.FloatField("with current", null=True, editable=False)
    starts_at = models.DateTimeField(null=True, editable=False)
    ends_at = models.DateTimeField(null=True, editable=False)
    sample_count = models.PositiveIntegerField(default=0, editable=False)
    left_out_count = models.PositiveIntegerField(default=0, editable=False)
    voltage_least_v = models.FloatField(null=True, editable=False)
    voltage_most_v = models.FloatField(null=True, editable=False)
    temperature_least_degc = models.FloatField(null=True, editable=False)
    temperature_most_degc = models.FloatField(null=True, editable=False)

    accepted_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    accepted_at = models.DateTimeField(null=True, editable=False)
    reason = models.CharField("why it is believed so", max_length=300, blank=True)
    withdrawn_reason = models.CharField("why it was withdrawn", max_length=300, blank=True)

    objects = TraceQuerySet.as_manager()

    class Meta:
        ordering = ["run", "starts_at", "id"]
        constraints = [
            models.UniqueConstraint(fields=["run", "token"], name="trace_once"),
            models.UniqueConstraint(
                fields=["run", "sha256"], condition=~models.Q(state="withdrawn"), name="trace_file_once_a_run",
                violation_error_message="This very file stands at the run already.",
            ),
        ]  # fmt: skip

    def __str__(self) -> str:
        return f"trace {self.original_name} of {self.run.number}"

    def get_absolute_url(self) -> str:
        return reverse("trace", args=[self.pk])

    @property
    def charge_ah(self) -> float | None:
        """The trace's figure: what was integrated, and what a person bridged."""
        return None if self.known_ah is None else self.known_ah + (self.bridged_ah or 0.0)

    @property
    def is_pending(self) -> bool:
        """It does not count yet, and may be taken away with its file."""
        return self.state in {self.State.READING, self.State.FOUND}

    @property
    def is_accepted(self) -> bool:
        return self.state == self.State.ACCEPTED

    @property
    def is_mapped(self) -> bool:
        return self.known_ah is not None


class TraceCurve(models.Model):
    """A few thousand points for the chart, so that no page opens the file; drawn anew with each reckoning."""

    trace = models.OneToOneField(Trace, models.CASCADE, related_name="curve")
    # [seconds since the trace's start, amperes or null where a gap begins]
    points = models.JSONField(default=list)

    def __str__(self) -> str:
        return f"curve of {self.trace}"


class HeaderWord(Tracked):
    """A word that stands above a column of loggers, and what it means."""

    meaning = models.CharField(max_length=20, choices=[(meaning, meaning) for meaning in MEANINGS])
    word = models.CharField(max_length=60)

    class Meta:
        ordering = ["meaning", "word"]
        constraints = [models.UniqueConstraint(fields=["word"], name="header_word_means_one_thing")]

    def __str__(self) -> str:
        return f"“{self.word}” means {self.meaning}"

    def get_absolute_url(self) -> str:
        return reverse("header_word_list")


class TraceShape(Tracked):
    """How files of one shape were read when a person last confirmed it."""

    signature = models.CharField(max_length=64, unique=True, editable=False)
    headers = models.CharField("columns", max_length=500, blank=True, editable=False)
    mapping = models.JSONField(default=dict, editable=False)

    class Meta:
        ordering = ["headers"]

    def __str__(self) -> str:
        return f"shape of traces with {self.headers}"
