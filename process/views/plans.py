"""The plan of a run: everything computed while one types, kept when it is right."""

from typing import Any

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse
from django.views.decorators.http import require_POST

from process.forms.plans import PlanForm
from process.forms.ramps import ramp_rows, with_another_row
from process.models import Event, Run
from process.services.plans import refuse_started
from process.services.scan_files import waiting_at
from process.summaries.costing import prices_for
from process.summaries.reckoned import reckon
from process.summaries.similar import lessons_for
from process.summaries.words import clock_time
from records import access
from records.forms.money import say_currency
from records.views.answering import answer_form

RUNS = Run.objects.with_sheet()


def run_plan(request: HttpRequest, number: str) -> HttpResponse:
    """The plan as it stands, or as it is being tried: “reckon” and “one more step” keep nothing."""
    found = access.fetch(request, RUNS, number=number)
    may_write = access.may(request.user, "write", Run) and not _started(found)
    if request.method == "POST":
        access.require(request, "write", Run)
    if request.method != "POST" or {"reckon", "more"} & set(request.POST):
        return _tried(request, found, may_write)
    form = PlanForm(request.POST, instance=found)

    def act(form: PlanForm) -> Run:
        refuse_started(found)
        return form.save()

    return answer_form(
        request, form, act=act, template="process/run_plan.html",
        then=lambda run: reverse("run_plan", args=[run.number]), **_page(found, form, may_write),
    )  # fmt: skip


def _started(run: Run) -> bool:
    return any(event.kind == Event.Kind.ENTRY for event in run.events.all())


def _tried(request: HttpRequest, run: Run, may_write: bool) -> HttpResponse:
    form = PlanForm(request.POST or None, instance=run)
    if form.is_bound:
        form.is_valid()
    context = {"form": form, **_page(run, form, may_write)}
    if "more" in request.POST:
        form.ramp = ramp_rows(run, with_another_row(request.POST))
    return render(request, "process/run_plan.html", context)


def _page(run: Run, form: PlanForm, may_write: bool) -> dict[str, Any]:
    reckoned = _reckoned(run, form)
    say_currency(form, _currency(run, reckoned))
    start = f" for {clock_time(run.planned_start_at)}" if run.planned_start_at else ""
    return {
        "title": f"Plan of {run.number}", "run": run, "number": run.number, "may_write": may_write,
        "sentence": f"Bath {run.bath.number}{start}. Every figure opens to its working.",
        "reckoned": reckoned, "lessons": lessons_for(run, list(run.cathodes.all())),
        "started": _started(run), "waiting": waiting_at(*run.cathodes.all()),
    }  # fmt: skip


def _currency(run: Run, reckoned: Any) -> str:
    costing = reckoned.details.costing if reckoned else None
    prices = costing.prices if costing else prices_for(run)
    return prices.currency if prices else ""


def _reckoned(run: Run, form: PlanForm) -> Any:
    """What was typed, as far as it can be computed with; else the plan as it is kept."""
    if not form.is_bound:
        return reckon(run)
    return reckon(form.instance, form.steps(), form.cleaned_data.get("ready_in_h")) if form.is_reckonable else None


@require_POST
def run_plan_figures(request: HttpRequest, number: str) -> HttpResponse:
    """The figures of what is being typed; nothing is kept."""
    found = access.fetch(request, RUNS, to="write", number=number)
    form = PlanForm(request.POST, instance=found)
    form.is_valid()
    context = {"run": found, "form": form, "reckoned": _reckoned(found, form)}
    return render(request, "process/_plan_reckoned.html", context)


urls = [
    path("runs/<str:number>/plan/", run_plan, name="run_plan"),
    path("runs/<str:number>/plan/figures/", run_plan_figures, name="run_plan_figures"),
]
