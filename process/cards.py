"""What runs put on the home page: the next reading, what waits after a stop, and a growing bar for each that is in the bath."""

from collections.abc import Iterable
from datetime import timedelta

from django.http import HttpRequest
from django.urls import reverse
from django.utils import timezone

from process.models import Bath, BathAnalysis, Run
from process.summaries.baths import analysis_standing
from process.summaries.next_step import next_step
from process.summaries.runs import RunSummary, summarise
from records import access, clock
from records.extensions import HomeCard, home_cards
from records.units import show

SHOWN = 12


def runs_in_the_bath(request: HttpRequest) -> Iterable[HomeCard]:
    """Everyone sees what grows; those who write on the sheet get its next line as a verb."""
    for run in Run.objects.going_on().with_sheet()[:SHOWN]:
        summary = summarise(run)
        if access.may(request.user, "write", Run):
            yield _next_line(summary)
        yield HomeCard(run.number, run.get_absolute_url(), template="process/_running_card.html", context=_growth(summary))


def _next_line(summary: RunSummary) -> HomeCard:
    run, prospect, step = summary.run, summary.prospect, next_step(summary)
    if summary.standing.code == "interrupted":
        return HomeCard(f"No current in {run.number}: see to it, then enter when it is back", step.url, "now", "blocked")
    if prospect.reached:
        return HomeCard(f"Stop {run.number}: the planned charge has passed", step.url, "now", "look")
    due = timezone.localtime(prospect.next_reading_at)
    day = "" if due.date() == clock.today() else f"{due:%-d %b} "
    state = "blocked" if prospect.is_late else "look" if prospect.is_due else "open"
    return HomeCard(f"Enter the {day}{due:%H:%M} reading of {run.number}", reverse("reading_add", args=[run.number]), "now", state)


def _growth(summary: RunSummary) -> dict[str, object]:
    """What the running line shows."""
    thickness, at = summary.thickness, summary.prospect.finish_at if summary.prospect else None
    finish = f"expected finish {timezone.localtime(at):%-d %b, %H:%M}" if at else summary.standing.word
    percent = thickness.value / thickness.target * 100 if thickness and thickness.target else None
    charge = show(summary.charge.chosen.value, "_ah") if summary.charge.chosen.value is not None else ""
    return {"thickness": thickness, "percent": percent, "note": ", ".join(filter(None, [charge, finish]))}


def runs_after_the_stop(request: HttpRequest) -> Iterable[HomeCard]:
    """Weighing and judging that is still owed."""
    if not access.may(request.user, "write", Run):
        return
    for run in Run.objects.to_be_judged().with_sheet()[:SHOWN]:
        summary = summarise(run)
        step = next_step(summary)
        old = clock.now() - summary.sheet.stopped_at > timedelta(days=7)
        yield HomeCard(f"{step.text}, {run.number}", step.url, "now" if old else "week", "look" if old else "open")


def runs_to_start(request: HttpRequest) -> Iterable[HomeCard]:
    """Planned for today, or for a day that has passed."""
    if not access.may(request.user, "write", Run):
        return
    soon = clock.now() + timedelta(days=7)
    for run in Run.objects.planned().filter(planned_start_at__lte=soon).order_by("planned_start_at")[:SHOWN]:
        day = timezone.localdate(run.planned_start_at)
        when = "now" if day <= clock.today() else "week"
        state = "look" if day < clock.today() else "open"
        yield HomeCard(f"Start {run.number}", run.get_absolute_url(), when, state, day)


def baths_to_analyse(request: HttpRequest) -> Iterable[HomeCard]:
    """A bath whose last analysis no longer holds: no run should start in it."""
    if not access.may(request.user, "write", BathAnalysis):
        return
    for bath in Bath.objects.filter(retired_on__isnull=True)[:SHOWN]:
        standing = analysis_standing(bath, clock.today())
        if not standing.holds:
            age = f": {standing.age_days_count} days" if standing.age_days_count is not None else ""
            yield HomeCard(f"Analyse bath {bath.number}{age}", reverse("analysis_add", args=[bath.number]), "now", "look")


home_cards += [runs_in_the_bath, runs_after_the_stop, runs_to_start, baths_to_analyse]
