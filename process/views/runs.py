"""Runs: the list, the plan, the page that lives while it runs, and how it ended."""

from collections.abc import Callable
from typing import Any
from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import render
from django.urls import path, reverse

from process.forms.run_filter import RunFilter
from process.forms.runs import JudgeForm, RunForm
from process.models import Bath, Mould, Run
from process.services.runs import judge_run
from process.summaries.run_changes import changes_of_run
from process.summaries.run_lines import RunLine, line_of
from process.summaries.runs import summarise
from process.views import rig_photos
from process.views.run_page import page_of
from records import access
from records.units import show
from records.views.answering import answer_form
from records.views.listing import Column, export, page, wants_export

COLUMNS: list[Column] = [
    ("Number", "run__number"),
    ("Bath", "run__bath__number"),
    ("State", "standing__word"),
    ("Cathodes", "cathodes"),
    ("Started (UTC)", lambda line: line.started_at and line.started_at.isoformat()),
    ("Planned charge (Ah)", "planned_ah"),
    ("Charge (Ah)", "charge_ah"),
    ("Efficiency (%)", "efficiency_pct"),
]


def run_list(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "view", Run)
    form = RunFilter(request.GET)
    rows = form.narrow(Run.objects.with_sheet())
    if wants_export(request):
        return export(_lines(rows.order_by("-number")), COLUMNS, "runs")
    found = page(rows, request, key="-number")
    context = {"form": form, "lines": _lines(found.rows), "next_key": found.next_key}
    return render(request, "process/run_list.html", context)


def _lines(runs) -> list[RunLine]:
    return [line_of(run) for run in runs]


def run_add(request: HttpRequest) -> HttpResponse:
    access.require(request, "write", Run)
    form = RunForm(
        request.POST or None,
        user=request.user,
        initial=_offered(request),
    )
    return answer_form(
        request,
        form,
        title="Plan a run",
        verb="Keep the plan",
        then=_then(request),
        back_url=reverse("run_list"),
        sentence="One bath, one constant set of cathodes. Current, charge and hours follow once they hang there.",
    )


def _offered(request: HttpRequest) -> dict[str, Any]:
    """The bath from which the person came, or the only one; of the mould its commission and what that specifies."""
    baths = Bath.objects.filter(retired_on__isnull=True)
    chosen = list(baths.filter(number=request.GET.get("bath", ""))) or list(baths[:2])
    offered: dict[str, Any] = {"bath": chosen[0] if len(chosen) == 1 else None}
    mould = Mould.objects.filter(item__number=request.GET.get("mould", "")).select_related("commission").first()
    if mould and mould.commission:
        wanted = mould.commission.specifications.filter(item=mould.model_id).first()
        offered["commission"] = mould.commission
        if wanted:
            offered |= {"planned_thickness_mm": wanted.thickness_mean_mm, "ion": wanted.metal_ion}
    return offered


def _then(request: HttpRequest) -> Callable[[Run], str]:
    """A plan that began with a mould goes on by hanging it on the rail."""
    mould = request.GET.get("mould")
    if not mould:
        return Run.get_absolute_url
    return lambda run: f"{reverse('cathode_add', args=[run.number])}?{urlencode({'mould': mould})}"


def run(request: HttpRequest, number: str) -> HttpResponse:
    found = access.fetch(request, Run.objects.with_sheet().with_traces(), number=number)
    return render(request, "process/run.html", page_of(request, found))


def run_figures(request: HttpRequest, number: str) -> HttpResponse:
    """The three large figures as they stand now; 286 tells the page to ask no more."""
    found = access.fetch(request, Run.objects.with_sheet().with_traces(), number=number)
    summary = summarise(found)
    status = 200 if summary.standing.is_live else 286
    return render(
        request, "process/_run_figures.html", {"run": found, "summary": summary, "swapped": True}, status=status
    )


def run_edit(request: HttpRequest, number: str) -> HttpResponse:
    found = access.fetch(request, Run.objects.with_sheet().with_traces(), to="write", number=number)
    form = RunForm(request.POST or None, instance=found)
    return answer_form(
        request, form, title="Correct the plan", number=found.number, verb="Keep", then=Run.get_absolute_url,
        back_url=found.get_absolute_url(), intro=_plan_in_words(found),
    )  # fmt: skip


def _plan_in_words(found: Run) -> str:
    """What the stored plan comes to."""
    plan = summarise(found).plan
    if plan is None or plan.time.value is None:
        return "Current, charge and hours are computed once a cathode hangs on the rail."
    known = [show(figure.value, figure.suffix) for figure in (plan.current, plan.charge, plan.time)]
    return f"As it stands, {show(plan.area.value, '_dm2')} in the bath take {known[0]}, {known[1]} and {known[2]}."


def run_judge(request: HttpRequest, number: str) -> HttpResponse:
    found = access.fetch(request, Run, to="write", number=number)
    form = JudgeForm(request.POST or None, initial={"outcome": found.outcome, "outcome_words": found.outcome_words})

    def act(form: JudgeForm) -> Run:
        judge_run(run=found, outcome=form.cleaned_data["outcome"], words=form.cleaned_data["outcome_words"])
        return found

    return answer_form(
        request, form, title="How it ended", number=found.number, verb="Keep", act=act, then=Run.get_absolute_url,
        back_url=found.get_absolute_url(),
    )  # fmt: skip


def run_history(request: HttpRequest, number: str) -> HttpResponse:
    run = access.fetch(request, Run, number=number)
    return render(request, "process/run_history.html", {"run": run, "entries": changes_of_run(run)})


urls = [
    path("runs/", run_list, name="run_list"),
    path("runs/new/", run_add, name="run_add"),
    path("runs/<str:number>/", run, name="run"),
    path("runs/<str:number>/edit/", run_edit, name="run_edit"),
    path("runs/<str:number>/figures/", run_figures, name="run_figures"),
    path("runs/<str:number>/history/", run_history, name="run_history"),
    path("runs/<str:number>/judge/", run_judge, name="run_judge"),
    *rig_photos.urls,
]
