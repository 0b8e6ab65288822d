"""Which baths are due for an analysis, all of them in one question: by days and by charge.

Whether the last analysis lies within the limits is the bath's page's and the gate's business (`analysis_standing`).
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime

from django.db.models import Exists, OuterRef, Subquery
from django.utils import timezone

from process.models import Bath, BathAnalysis, BathLimit, Event, Run
from process.summaries.charge import chosen_charge_ah


@dataclass(frozen=True)
class BathAge:
    """A bath in use and how long ago it was sampled."""

    bath: Bath
    sampled_at: datetime | None
    days_count: int | None
    has_limits: bool

    @property
    def is_old(self) -> bool:
        return self.days_count is None or self.days_count > self.bath.analysis_valid_days_count

    def is_due(self, runs: Iterable[Run]) -> bool:
        """Too old, or too much charge since; the runs come with their readings and events."""
        if self.is_old or self.sampled_at is None:
            return True
        mine = (run for run in runs if run.bath_id == self.bath.pk and _entered(run, self.sampled_at))
        return sum(chosen_charge_ah(run) for run in mine) / self.bath.volume_l > self.bath.analysis_valid_ah_l


def bath_ages(on: date) -> list[BathAge]:
    last = BathAnalysis.objects.filter(bath=OuterRef("pk")).order_by("-sampled_at").values("sampled_at")[:1]
    limits = BathLimit.objects.filter(bath=OuterRef("pk"))
    baths = Bath.objects.filter(retired_on__isnull=True)
    baths = baths.annotate(last_sampled_at=Subquery(last), has_limits=Exists(limits))
    return [
        BathAge(bath, bath.last_sampled_at, _days(bath.last_sampled_at, on), has_limits=bath.has_limits)
        for bath in baths
    ]


def _days(at: datetime | None, on: date) -> int | None:
    return (on - timezone.localdate(at)).days if at else None


def _entered(run: Run, since: datetime) -> bool:
    return any(event.kind == Event.Kind.ENTRY and event.at >= since for event in run.events.all())
