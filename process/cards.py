"""What runs and baths put on the home page: the next reading, what waits after a stop, what grows, what to analyse."""

from collections.abc import Iterable
from datetime import timedelta

from django.db.models import Exists, OuterRef, Q
from django.http import HttpRequest
from django.urls import reverse
from django.utils import timezone

from process.models import BathAnalysis, BathLimit, Event, Run
from process.summaries.baths_due import BathAge, bath_ages
from process.summaries.next_step import next_step
from process.summaries.runs import RunSummary, summarise
from records import access, clock
from records.extensions import HomeCard, home_cards
from records.units import show

SHOWN = 24
SOON = timedelta(days=7)


def making(request: HttpRequest) -> Iterable[HomeCard]:
    """Runs and baths together: the runs are read once for both, with few questions to the database."""
    ages = bath_ages(clock.today())
    since = min((each.sampled_at for each in ages if not each.is_old), default=None)
    runs = list(_runs_since(since))
    for run in [run for run in runs if not run.outcome][:SHOWN]:
        yield from _cards_of(summarise(run), access.may(request.user, "write", Run))
    yield from _baths(request, ages, runs)


def _baths(request: HttpRequest, ages: list[BathAge], runs: list[Run]) -> Iterable[HomeCard]:
    """What a bath needs before a run may start: limits to judge it by, and an analysis that holds."""
    may_limit = access.may(request.user, "write", BathLimit)
    may_analyse = access.may(request.user, "write", BathAnalysis)
    for each in ages:
        number = each.bath.number
        if may_limit and not each.has_limits:
            yield HomeCard(f"Set the limits of bath {number}", f"{each.bath.get_absolute_url()}#limits", "now", "look")
        if may_analyse and each.is_due(runs):
            age = f": {each.days_count} days" if each.days_count is not None else ""
            yield HomeCard(f"Analyse bath {number}{age}", reverse("analysis_add", args=[number]), "now", "look")


def _runs_since(since):
    """Runs without an outcome, and those that went into a bath since its analysis."""
    wanted = Q(outcome="")
    if since:
        wanted |= Q(Exists(Event.objects.filter(run=OuterRef("pk"), kind=Event.Kind.ENTRY, at__gte=since)))
    return Run.objects.with_sheet(points=False).filter(wanted)


def _cards_of(summary: RunSummary, may_write: bool) -> Iterable[HomeCard]:
    """Everyone sees what grows; those who write on the sheet get the next thing to do as a verb."""
    run, code = summary.run, summary.standing.code
    if may_write and (card := _planned(summary) if code == "planned" else _verb(summary)):
        yield card
    if summary.standing.is_live:
        yield HomeCard(
            run.number, run.get_absolute_url(), template="process/_running_card.html", context=_growth(summary)
        )


def _verb(summary: RunSummary) -> HomeCard:
    run, prospect, step = summary.run, summary.prospect, next_step(summary)
    if summary.standing.code == "stopped":
        old = clock.now() - summary.sheet.stopped_at > SOON
        return HomeCard(f"{step.text}, {run.number}", step.url, "now" if old else "week", "look" if old else "open")
    if summary.standing.code == "interrupted":
        sentence = f"No current in {run.number}: see to it, then enter when it is back"
        return HomeCard(sentence, step.url, "now", "blocked")
    if prospect.reached:
        return HomeCard(f"Stop {run.number}: the planned charge has passed", step.url, "now", "look")
    due = timezone.localtime(prospect.next_reading_at)
    day = "" if due.date() == clock.today() else f"{due:%-d %b} "
    state = "blocked" if prospect.is_late else "look" if prospect.is_due else "open"
    url = reverse("reading_add", args=[run.number])
    return HomeCard(f"Enter the {day}{due:%H:%M} reading of {run.number}", url, "now", state)


def _planned(summary: RunSummary) -> HomeCard | None:
    """Planned for these days, for a day that has passed, or for no day yet."""
    run = summary.run
    if run.planned_start_at is None:
        step = next_step(summary)
        return HomeCard(f"{step.text}, {run.number}", run.get_absolute_url(), "later")
    if run.planned_start_at > clock.now() + SOON:
        return None
    day = timezone.localdate(run.planned_start_at)
    state = "look" if day < clock.today() else "open"
    return HomeCard(
        f"Start {run.number}", run.get_absolute_url(), "now" if day <= clock.today() else "week", state, day
    )


def _growth(summary: RunSummary) -> dict[str, object]:
    """What the running line shows."""
    thickness, at = summary.thickness, summary.prospect.finish_at if summary.prospect else None
    finish = f"expected finish {timezone.localtime(at):%-d %b, %H:%M}" if at else summary.standing.word
    percent = thickness.value / thickness.target * 100 if thickness and thickness.target else None
    charge = show(summary.charge.chosen.value, "_ah") if summary.charge.chosen.value is not None else ""
    return {"thickness": thickness, "percent": percent, "note": ", ".join(filter(None, [charge, finish]))}


home_cards.append(making)
