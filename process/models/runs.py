"""A run in one bath: its plan, its cathodes, the readings and events of its sheet."""

import uuid

from django.db import models
from django.db.models import Q
from django.urls import reverse
from django.utils import timezone

from records.models import Strikable, Tracked

from .moulds import Side
from .plan_fields import PlanFields
from .run_rows import RunQuerySet


class Run(PlanFields, Tracked):
    class Outcome(models.TextChoices):
        GOOD = "good", "good"
        RESERVED = "reserved", "usable, with a reservation"
        FAILED = "failed", "failed"
        ABANDONED = "abandoned", "abandoned"

    class ChargeFrom(models.TextChoices):
        SHEET = "sheet", "the sheet"
        METER = "meter", "the ampere-hour meter"
        TRACE = "trace", "the logger’s trace"

    class Agitation(models.TextChoices):
        QUIET = "quiet", "still bath"
        AGITATED = "agitated", "agitated bath"

    number = models.CharField(max_length=40, unique=True)
    bath = models.ForeignKey("process.Bath", models.PROTECT, related_name="runs")
    commission = models.ForeignKey("records.Commission", models.PROTECT, null=True, blank=True, related_name="runs")
    ion = models.CharField("metal", max_length=8, default="Cu2+")
    deposit_density_g_cm3 = models.FloatField("density of the deposit", default=8.92)
    agitation = models.CharField(max_length=20, choices=Agitation, default=Agitation.QUIET)

    planned_current_density_a_dm2 = models.FloatField("current density")
    planned_thickness_mm = models.FloatField("target mean thickness")
    planned_efficiency_pct = models.FloatField("efficiency assumed", default=98.5)
    planned_start_at = models.DateTimeField(null=True, blank=True)
    reading_interval_h = models.FloatField("a reading every", default=2)

    charge_from = models.CharField("charge taken from", max_length=20, choices=ChargeFrom, default=ChargeFrom.SHEET)
    charge_reason = models.CharField("reason for that choice", max_length=300, blank=True)
    outcome = models.CharField(max_length=20, choices=Outcome, blank=True)
    outcome_words = models.TextField("what happened, and what was learned", blank=True)
    operator = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    note = models.TextField(blank=True)
    photos = models.ManyToManyField("records.Photo", blank=True, related_name="runs")

    objects = RunQuerySet.as_manager()

    class Meta:
        ordering = ["-number"]

    def __str__(self) -> str:
        return self.number

    def get_absolute_url(self) -> str:
        return reverse("run", args=[self.number])


class Cathode(Strikable):
    """What hangs in the bath, before there is a shell: a mould or a core, its coat, its area, its tare.

    One that was hung in by mistake is struck out together with that line of the sheet.
    """

    run = models.ForeignKey(Run, models.CASCADE, related_name="cathodes")
    label = models.CharField(max_length=40, help_text="As it is called at the rail, “obverse, left”.")
    mould = models.ForeignKey("process.Mould", models.PROTECT, null=True, blank=True, related_name="cathodes")
    core = models.ForeignKey("process.Core", models.PROTECT, null=True, blank=True, related_name="cathodes")
    pull = models.OneToOneField(
        "process.Pull", models.PROTECT, null=True, blank=True, related_name="cathode", editable=False
    )
    side = models.CharField(max_length=20, choices=Side, blank=True)
    coat = models.ForeignKey(
        "records.Term", models.PROTECT, null=True, blank=True, related_name="+", limit_choices_to={"scheme": "coat"}
    )
    coat_resistance_ohm = models.FloatField("resistance of the coat", null=True, blank=True)
    coat_distance_mm = models.FloatField("measured over", null=True, blank=True, default=100)
    face_area_dm2 = models.FloatField("face area")
    total_area_dm2 = models.FloatField("whole area in the bath", help_text="Face, flange, wires and thieves together.")
    tare_g = models.FloatField("wires and clips before", null=True, default=0)
    rig = models.TextField("contacts, orientation, shields", blank=True)

    class Meta:
        ordering = ["run", "id"]
        constraints = [
            models.CheckConstraint(
                condition=Q(mould__isnull=True) | Q(core__isnull=True),
                name="cathode_mould_or_core",
                violation_error_message="A cathode is a mould or a core: leave one of the two empty.",
            ),
            models.CheckConstraint(
                condition=Q(face_area_dm2__gt=0) & Q(total_area_dm2__gte=models.F("face_area_dm2")),
                name="cathode_area_covers_face",
                violation_error_message="The whole area includes the face: it cannot be smaller; neither may be zero.",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.label} of {self.run.number}"

    def get_absolute_url(self) -> str:
        return self.run.get_absolute_url()


class SheetEntry(Strikable):
    """One line of the sheet. The form's UUID makes sending it twice harmless."""

    token = models.UUIDField(default=uuid.uuid4, editable=False)
    at = models.DateTimeField("time")
    current_a = models.FloatField("current", null=True, blank=True)
    voltage_v = models.FloatField("cell voltage", null=True, blank=True)
    temperature_degc = models.FloatField("bath temperature", null=True, blank=True)
    person = models.ForeignKey(
        "records.Party", models.PROTECT, null=True, blank=True, related_name="+", verbose_name="initials"
    )
    note = models.CharField(max_length=300, blank=True)

    class Meta:
        abstract = True

    def get_absolute_url(self) -> str:
        """Its own line on the run's sheet."""
        return f"{self.run.get_absolute_url()}#{self._meta.model_name}-{self.pk}"


class Reading(SheetEntry):
    run = models.ForeignKey(Run, models.CASCADE, related_name="readings")
    meter_ah = models.FloatField("ampere-hour meter", null=True, blank=True)

    class Meta:
        ordering = ["at", "id"]
        constraints = [models.UniqueConstraint(fields=["run", "token"], name="reading_once")]
        indexes = [models.Index(fields=["run", "at"])]

    def __str__(self) -> str:
        return f"reading of {self.run.number} at {timezone.localtime(self.at):%Y-%m-%d %H:%M}"


class Event(SheetEntry):
    class Kind(models.TextChoices):
        ENTRY = "entry", "into the bath, current on"
        COVERED = "covered", "fully covered"
        CURRENT = "current", "current changed"
        INTERRUPTION = "interruption", "current gone"
        RESTART = "restart", "current back"
        HUNG_IN = "hung_in", "hung in"
        TAKEN_OUT = "taken_out", "taken out"
        INSPECTION = "inspection", "looked at"
        FAULT = "fault", "fault"
        STOP = "stop", "stopped, end of the run"

    class Cause(models.TextChoices):
        POWER = "power", "power failure"
        CONTACT = "contact", "contact lost"
        INSPECTION = "inspection", "deliberate inspection"
        LEVEL = "level", "level or pump"
        SAFETY = "safety", "safety stop"
        CHARGE = "charge", "charge reached"
        FAULT = "fault", "fault in the deposit"
        TIME = "time", "end of shift or time"

    class Handling(models.TextChoices):
        IMMERSED = "immersed", "stayed in the bath"
        WET = "wet", "lifted, kept wet"
        DRIED = "dried", "dried"
        TOUCHED = "touched", "touched"

    class Activation(models.TextChoices):
        NONE = "none", "none"
        RINSE = "rinse", "rinsed"
        ACID = "acid", "acid dip"
        BRUSH = "brush", "brushed"
        REVERSE = "reverse", "current reversed"

    run = models.ForeignKey(Run, models.CASCADE, related_name="events")
    kind = models.CharField("what happened", max_length=20, choices=Kind)
    # Which cathode was hung in or taken out while the run went on; these events say when it hung there.
    cathode = models.ForeignKey(Cathode, models.CASCADE, null=True, blank=True, related_name="events", editable=False)
    cause = models.CharField(max_length=20, choices=Cause, blank=True)
    handling = models.CharField("meanwhile it", max_length=20, choices=Handling, blank=True)
    activation = models.CharField("before the restart", max_length=20, choices=Activation, blank=True)
    returned_by_itself = models.BooleanField("the current came back by itself", default=False)

    class Meta:
        ordering = ["at", "id"]
        constraints = [
            models.UniqueConstraint(fields=["run", "token"], name="event_once"),
            models.UniqueConstraint(
                fields=["run", "kind"], condition=Q(kind__in=["entry", "stop"], struck_at__isnull=True),
                name="event_one_entry_one_stop",
                violation_error_message="A run begins and ends once: correct the entry that stands there.",
            ),
            models.UniqueConstraint(
                fields=["cathode", "kind"], condition=Q(kind__in=["hung_in", "taken_out"], struck_at__isnull=True),
                name="event_cathode_once",
                violation_error_message="A cathode is hung in once and taken out once: correct the line there.",
            ),
        ]  # fmt: skip
        indexes = [models.Index(fields=["run", "at"])]

    def __str__(self) -> str:
        return f"{self.get_kind_display()}, {self.run.number}"
