"""Rows that can be taken back: struck out with a reason, kept, and left out of every calculation."""

from django.db import models

from .base import Tracked, TrackedQuerySet


class StandingManager(models.Manager.from_queryset(TrackedQuerySet)):
    """The rows that stand. As the default manager it also rules `run.readings`, prefetching and `Exists`."""

    def get_queryset(self) -> TrackedQuerySet:
        return super().get_queryset().filter(struck_at__isnull=True)


class Strikable(Tracked):
    """`objects`, and every relation to these rows, leave out what was struck; `every` holds them all.

    A filter across a relation (`run__events__kind=…`) asks the table itself and sees struck rows too:
    ask `Exists(Event.objects.filter(…))` instead.
    """

    struck_at = models.DateTimeField("struck out", null=True, blank=True, editable=False)
    struck_by = models.ForeignKey(
        "records.Party", models.PROTECT, null=True, blank=True, related_name="+", editable=False,
        verbose_name="struck out by",
    )  # fmt: skip
    struck_reason = models.CharField("why it was struck out", max_length=300, blank=True, editable=False)

    objects = StandingManager()
    every = TrackedQuerySet.as_manager()

    class Meta:
        abstract = True

    @property
    def is_struck(self) -> bool:
        return self.struck_at is not None
