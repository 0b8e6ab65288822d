"""What the making tells of a copy for its surveys: a core inside, an interruption while it grew, and since when."""

from collections.abc import Iterable

from django.db.models import Exists, OuterRef, Subquery

from process.models import Event, Inspection, InterruptionAnswers, MakingUp, Shell
from records.extensions import SurveyHistory, survey_histories

ACCEPTED = [Inspection.Decision.ACCEPT, Inspection.Decision.CONCESSION]


def histories_of(copies: Iterable[int]) -> dict[int, SurveyHistory]:
    """By key of the copy; an interruption is one that was written down, as an event or by answers about it."""
    accepted = Inspection.objects.filter(copy=OuterRef("copy"), signed_at__isnull=False, decision__in=ACCEPTED)
    rows = MakingUp.objects.filter(copy__in=copies).annotate(
        accepted_on=Subquery(accepted.order_by("-inspected_on").values("inspected_on")[:1]),
        was_interrupted=Exists(_with(Event.objects.filter(kind=Event.Kind.INTERRUPTION)))
        | Exists(_with(InterruptionAnswers.objects.all())),
    )
    return {making_up.copy_id: _history(making_up) for making_up in rows}


def _with(stops):
    """Interruptions of the runs in which the shells of a copy grew."""
    runs = Shell.objects.filter(making_up=OuterRef(OuterRef("pk"))).values("cathode__run")
    return stops.filter(run__in=runs)


def _history(making_up: MakingUp) -> SurveyHistory:
    code = "core" if making_up.core_id else "interrupted" if making_up.was_interrupted else "other"
    if making_up.accepted_on:
        return SurveyHistory(code, making_up.accepted_on, "accepted")
    return SurveyHistory(code, making_up.made_up_on, "made up")


survey_histories.append(histories_of)
