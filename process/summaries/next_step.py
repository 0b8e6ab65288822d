"""The one thing to do next in a run."""

from dataclasses import dataclass
from urllib.parse import urlencode

from django.urls import reverse

from process.models import Event, Run
from process.summaries.drying import Drying
from process.summaries.runs import RunSummary


@dataclass(frozen=True)
class Step:
    text: str
    url: str


def event_url(number: str, kind: str) -> str:
    return f"{reverse('event_add', args=[number])}?kind={kind}"


def next_step(summary: RunSummary) -> Step | None:
    """Plan, cathode, start, reading, stop, weigh, judge, make up."""
    number, code = summary.run.number, summary.standing.code
    if code == "planned":
        if not summary.run.cathodes.all():
            return Step("Add a cathode", reverse("cathode_add", args=[number]))
        return Step("Start the run", reverse("run_start", args=[number]))
    if code == "interrupted":
        return Step("Current is back", event_url(number, Event.Kind.RESTART))
    if code == "running":
        if summary.prospect and summary.prospect.reached:
            return Step("Stop the run", event_url(number, Event.Kind.STOP))
        return Step("Enter a reading", reverse("reading_add", args=[number]))
    if summary.run.outcome in (Run.Outcome.GOOD, Run.Outcome.RESERVED):
        return making_up_step(summary)
    return _after(summary) if code == "stopped" else None


def _after(summary: RunSummary) -> Step:
    unweighed = next((each.cathode for each in summary.cathodes if each.shell is None), None)
    if unweighed:
        return Step(f"Weigh what grew on {unweighed.label}", reverse("shell_weigh", args=[unweighed.pk]))
    lost = next((each for each in summary.cathodes if each.gain is None), None)
    if lost:
        number, page = lost.shell.item.number, "weighing_add" if lost.cathode.core_id else "shell_edit"
        return Step(f"Weigh {number} again", reverse(page, args=[number]))
    return Step("Say how it ended", reverse("run_judge", args=[summary.run.number]))


def _drying_step(drying: Drying) -> Step:
    """A skinned core is weighed until its mass is constant, and closed, before it is made up."""
    number = drying.shell.item.number
    if drying.may_close:
        return Step(f"Write how {number} is closed", reverse("closing_add", args=[number]))
    return Step(f"Weigh {number} again", reverse("weighing_add", args=[number]))


def making_up_step(summary: RunSummary) -> Step | None:
    """What grew in the run and is free goes into a copy together; a failed run keeps its shells as evidence."""
    if (drying := next((each for each in summary.dryings if each.is_open), None)) is not None:
        return _drying_step(drying)
    shells = [each.shell for each in summary.cathodes if each.shell and each.shell.is_free]
    if not shells or summary.run.outcome == Run.Outcome.FAILED:
        return None
    chosen = urlencode({"shell": [shell.item.number for shell in shells]}, doseq=True)
    return Step("Make up a copy", f"{reverse('making_up_add')}?{chosen}")
