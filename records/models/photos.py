"""Photographs: the original file kept byte for byte, and what it shows."""

from django.core.exceptions import ValidationError
from django.db import models
from django.db.models import Min, OuterRef, Q, Subquery
from django.urls import reverse

from .base import Tracked, TrackedQuerySet
from .descent import DescentLink


class PhotoQuerySet(TrackedQuerySet):
    def with_moulding(self) -> "PhotoQuerySet":
        """Each with `moulded_on`, the day when its thing was first moulded, and `kept_at`, when it came in."""
        entries = self.model.history.filter(id=OuterRef("pk")).order_by("history_date").values("history_date")
        moulded = DescentLink.objects.filter(source=OuterRef("item"), transfer=DescentLink.Transfer.MOULDING)
        first = moulded.order_by().values("source").annotate(first=Min("happened_on")).values("first")
        return self.annotate(moulded_on=Subquery(first), kept_at=Subquery(entries[:1]))

    def doubtful(self) -> "PhotoQuerySet":
        """Undated, or said to be from before a moulding that came first; asks for `with_moulding`."""
        after = Q(taken_at__date__gt=models.F("moulded_on")) | Q(kept_at__date__gt=models.F("moulded_on"))
        return self.filter(Q(taken_at__isnull=True) | Q(after, moment=Photo.Moment.BEFORE))


class Photo(Tracked):
    class View(models.TextChoices):
        OBVERSE = "obverse", "obverse or front"
        REVERSE = "reverse", "reverse or back"
        EDGE = "edge", "edge"
        RAKING = "raking", "raking light"
        ULTRAVIOLET = "ultraviolet", "ultraviolet"
        DETAIL = "detail", "detail"
        MARK = "mark", "mark"
        RIG = "rig", "rig"
        SHEET = "sheet", "bench sheet"
        OVERALL = "overall", "overall"

    class Moment(models.TextChoices):
        BEFORE = "before", "before"
        DURING = "during", "during"
        AFTER = "after", "after"

    item = models.ForeignKey("records.Item", models.PROTECT, null=True, blank=True, related_name="photos")
    view = models.CharField(max_length=20, choices=View, default=View.OVERALL)
    angle_deg = models.FloatField(
        "angle", null=True, blank=True,
        help_text="Clockwise from the top, 0° to 359°: the place of an edge, or where raking light comes from.",
    )  # fmt: skip
    moment = models.CharField(
        "before or after", max_length=10, choices=Moment, blank=True, help_text="Of moulding, treatment or a loan."
    )
    caption = models.CharField(max_length=300, blank=True)
    light = models.CharField(max_length=120, blank=True)
    has_scale = models.BooleanField("scale in the frame", default=False)
    has_colour_target = models.BooleanField("colour target in the frame", default=False)
    taken_at = models.DateTimeField(null=True, blank=True, help_text="From the camera unless a person corrected it.")
    taken_reason = models.CharField("why the time is corrected", max_length=300, blank=True, default="")
    taken_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    rights = models.CharField(max_length=200, blank=True)

    original_name = models.CharField(max_length=255, editable=False)
    path = models.CharField(max_length=200, editable=False)
    sha256 = models.CharField(max_length=64, editable=False, db_index=True)
    media_type = models.CharField(max_length=40, editable=False)
    camera = models.CharField(max_length=120, blank=True, editable=False)
    size_bytes_count = models.PositiveBigIntegerField(editable=False)
    width_px_count = models.PositiveIntegerField(editable=False)
    height_px_count = models.PositiveIntegerField(editable=False)

    objects = PhotoQuerySet.as_manager()

    class Meta:
        ordering = ["taken_at", "id"]

    def get_absolute_url(self) -> str:
        return reverse("photo", args=[self.pk])

    def __str__(self) -> str:
        return self.caption or self.original_name

    def clean(self) -> None:
        if self.angle_deg is not None and not 0 <= self.angle_deg < 360:
            raise ValidationError({"angle_deg": "Write an angle from 0° to 359°, clockwise from the top."})

    @property
    def view_words(self) -> str:
        return view_words(self.view, self.angle_deg)

    @property
    def subject(self) -> str:
        """What kind of thing is seen: read from the view, else from what the photograph hangs on."""
        if self.view in {self.View.MARK, self.View.SHEET}:
            return self.get_view_display()
        return self.item.get_kind_display() if self.item else "run"

    @property
    def is_undated(self) -> bool:
        return self.taken_at is None


def view_words(view: str, angle_deg: float | None) -> str:
    """“edge at 90°”, “raking light from 270°”."""
    said = dict(Photo.View.choices).get(view, view)
    if angle_deg is None:
        return said
    return f"{said} {'from' if view == Photo.View.RAKING else 'at'} {angle_deg:g}°"
