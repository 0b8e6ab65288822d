"""What the page of a run shows beside its figures: chart, entry row, gates that were not met, photographs."""

from typing import Any
from urllib.parse import urlencode

from django.db.models import Q
from django.http import HttpRequest
from django.urls import reverse
from django.utils import timezone
from django.utils.safestring import SafeString, mark_safe

from process.forms.sheet import ReadingForm
from process.models import Event, Reading, Run
from process.summaries.charts import run_chart
from process.summaries.next_step import Step, event_url, next_step
from process.summaries.runs import RunSummary, summarise
from process.summaries.similar_failures import similar_failures
from process.summaries.struck import lines_with_struck
from process.summaries.wall_limits import limits_of
from process.summaries.words import run_sentence
from records import access, clock
from records.models import Concession, Gate, UnmetGate
from records.pdf.charts import svg
from records.units import other_unit

NARROW = 380.0  # layout units of a chart on a phone
BATH_GATES = [Gate.AFTER, Gate.BATH]


def page_of(request: HttpRequest, run: Run) -> dict[str, Any]:
    """The whole context of process/run.html."""
    summary = summarise(run)
    may_write = access.may(request.user, "write", Run)
    may_read_in = access.may(request.user, "write", Reading) and summary.standing.is_live
    return {
        "run": run,
        "summary": summary,
        "lines": lines_with_struck(run, summary.sheet),
        "title": _title(run),
        "sentence": run_sentence(summary),
        **_charts(summary),
        "next": next_step(summary) if may_write else None,
        "quiet": _quiet(run, summary) if may_write else [],
        "cathode_url": reverse("cathode_add", args=[run.number]) if may_write else "",
        "density_other": other_unit(run.planned_current_density_a_dm2, "_a_dm2"),
        "may_write": may_write,
        "entry": _entry_row(request, run, summary) if may_read_in else None,
        "unmet": _unmet(run),
        "limits": limits_of(summary),
        "similar": similar_failures(run) if summary.standing.code == "planned" else (),
        "concessions": concessions_of(run),
        "photos": run.photos.all(),
    }


def _title(run: Run) -> str:
    """What the run copies, and what hangs on its rail."""
    cathodes = list(run.cathodes.all())
    pieces = dict.fromkeys(c.mould.model.title if c.mould else c.core.item.title for c in cathodes if c.mould or c.core)
    labels = ", ".join(cathode.label for cathode in cathodes)
    text = ": ".join(filter(None, [" and ".join(pieces), labels])) or "Run without a cathode yet"
    return text[0].upper() + text[1:]


def _quiet(run: Run, summary: RunSummary) -> list[Step]:
    """Everything else that can be done now."""
    steps = []
    if summary.standing.code == "interrupted":
        steps.append(Step("Enter a reading", reverse("reading_add", args=[run.number])))
    if summary.sheet.started_at and not run.outcome:
        steps.append(Step("Paste readings", reverse("readings_paste", args=[run.number])))
    if summary.standing.is_live:
        steps.append(Step("Enter an event", reverse("event_add", args=[run.number])))
        steps.append(Step("Hang another piece in", reverse("cathode_hang_in", args=[run.number])))
        steps.append(Step("Stop the run", event_url(run.number, Event.Kind.STOP)))
    if not summary.standing.is_live and not run.outcome and not summary.sheet.stopped_at:
        steps.append(Step("Give it up", reverse("run_judge", args=[run.number])))
    if run.outcome == Run.Outcome.FAILED:
        steps.append(Step("Write down what it teaches", f"{reverse('failure_add')}?{urlencode({'run': run.number})}"))
    if run.outcome:
        steps.append(Step("Correct the outcome", reverse("run_judge", args=[run.number])))
    if summary.standing.code == "planned":
        steps.append(Step("Reckon the plan", reverse("run_plan", args=[run.number])))
    return [*steps, Step("Correct the plan", reverse("run_edit", args=[run.number]))]


def _entry_row(request: HttpRequest, run: Run, summary: RunSummary) -> ReadingForm:
    """The quick way: only the current is offered, for what is folded away must not be saved unseen."""
    return ReadingForm(run=run, user=request.user, initial={"current_a": summary.sheet.current_a})


def _unmet(run: Run) -> list[UnmetGate]:
    """What was not met at the start, each sentence once though it was asked for every cathode."""
    rows = UnmetGate.objects.filter(subject_number=run.number)
    return list({(row.gate, row.sentence): row for row in rows}.values())


def concessions_of(run: Run) -> list[Concession]:
    """Those that let its moulds and cores into the bath, and those for the shells that grew in it."""
    cathodes = list(run.cathodes.all())
    sources = [c.mould_id or c.core_id for c in cathodes if c.mould_id or c.core_id]
    began = next((timezone.localdate(e.at) for e in run.events.all() if e.kind == Event.Kind.ENTRY), clock.today())
    holding = Q(given_on__lte=began) & (Q(valid_to__isnull=True) | Q(valid_to__gte=began))
    shells = [cathode.shell.pk for cathode in cathodes if hasattr(cathode, "shell")]
    named = Q(items__in=sources, gate__in=BATH_GATES) & holding | Q(items__in=shells)
    return list(Concession.objects.filter(named).select_related("given_by").distinct())


def _charts(summary: RunSummary) -> dict[str, SafeString]:
    """One drawing for a wide page, one for a phone; a stylesheet shows the one that fits."""
    chart = run_chart(summary)
    if chart is None:
        return {}
    wide, narrow = svg(chart, "run-chart"), svg(chart, "run-chart-narrow", NARROW)
    return {"chart": mark_safe(wide), "chart_narrow": mark_safe(narrow)}  # escaped by svg() itself
