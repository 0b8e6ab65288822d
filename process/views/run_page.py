"""What the page of a run shows beside its figures: chart, entry row, gates that were not met, photographs."""

from typing import Any

from django.db.models import Q
from django.http import HttpRequest
from django.utils.safestring import SafeString, mark_safe

from process.forms.sheet import ReadingForm
from process.models import Reading, Run
from process.summaries.charts import run_chart
from process.summaries.next_step import next_step
from process.summaries.runs import RunSummary, summarise
from records import access
from records.models import Concession, Gate, UnmetGate
from records.pdf.charts import svg

BATH_GATES = [Gate.AFTER, Gate.BATH]


def page_of(request: HttpRequest, run: Run) -> dict[str, Any]:
    """The whole context of process/run.html."""
    summary = summarise(run)
    may_write = access.may(request.user, "write", Run)
    may_read_in = access.may(request.user, "write", Reading) and summary.standing.is_live
    return {
        "run": run,
        "summary": summary,
        "chart": _chart(summary),
        "next": next_step(summary) if may_write else None,
        "may_write": may_write,
        "entry": ReadingForm(run=run, user=request.user, last=last_line(summary)) if may_read_in else None,
        "unmet": UnmetGate.objects.filter(subject_number=run.number),
        "concessions": concessions_of(run),
        "photos": run.photos.all(),
    }


def last_line(summary: RunSummary):
    """The line whose values the next reading begins with: the last one that gives a current."""
    return summary.sheet.currents[-1].row if summary.sheet.currents else None


def concessions_of(run: Run) -> list[Concession]:
    """Concessions of the run itself, and those that let its moulds and cores into the bath."""
    sources = [c.mould_id or c.core_id for c in run.cathodes.all() if c.mould_id or c.core_id]
    named = Q(runs=run) | Q(items__in=sources, gate__in=BATH_GATES)
    return list(Concession.objects.filter(named).select_related("given_by").distinct())


def _chart(summary: RunSummary) -> SafeString | None:
    chart = run_chart(summary)
    return mark_safe(svg(chart, "run-chart")) if chart else None  # escaped by svg() itself
