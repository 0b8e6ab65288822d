"""Baths: limits, analyses, additions and the ampere-hour ledger."""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse
from django.utils.safestring import mark_safe

from process.forms.bath_limits import BathLimitForm
from process.forms.baths import AdditionForm, BathForm
from process.models import Bath, BathAddition, BathLimit, Constituent
from process.summaries.bath_charts import bath_chart
from process.summaries.bath_limits import limit_lines
from process.summaries.bath_page import read_bath
from process.summaries.bath_standings import standings
from process.summaries.evenness import throw_of
from process.views.run_page import NARROW
from records import access, clock
from records.pdf.charts import svg
from records.views.answering import answer_form
from records.views.writing import begin, correct

ORDER = "Level to the mark, mix, sample, analyse, correct, mix, analyse again."
ACID = "Acid goes into the bath slowly, never water into acid. Eye protection; local rules decide."
SENTENCE = "Volume, targets and limits; every analysis is judged by the limits of its own bath."


def bath_list(request: HttpRequest) -> HttpResponse:
    """A workshop has a handful of baths: all are shown, each with the standing of its analysis."""
    access.require(request, "view", Bath)
    baths = list(Bath.objects.filter(retired_on__isnull=True).select_related("place"))
    rows = standings(baths, clock.today())
    return render(
        request, "process/bath_list.html", {"rows": rows, "retired": Bath.objects.filter(retired_on__isnull=False)}
    )


def bath_add(request: HttpRequest) -> HttpResponse:
    return begin(
        request, BathForm, title="Enter a bath", sentence=SENTENCE, verb="Enter it", back_url=reverse("bath_list"),
        then=Bath.get_absolute_url,
    )  # fmt: skip


def bath(request: HttpRequest, number: str) -> HttpResponse:
    found = access.fetch(request, Bath.objects.select_related("place").prefetch_related("limits"), number=number)
    reading = read_bath(found, clock.today())
    chart = bath_chart(found, reading.analyses, reading.ledger, reading.services, reading.additions)
    drawn = {"chart": mark_safe(svg(chart, "bath-chart")),  # escaped by svg() itself
             "chart_narrow": mark_safe(svg(chart, "bath-chart-narrow", NARROW))} if chart else {}  # fmt: skip
    throws = [throw_of(test) for test in found.throw_tests.all()[:10]]
    context = {"bath": found, "reading": reading, "limits": limit_lines(found), "throws": throws, **drawn}
    return render(request, "process/bath.html", context)


def bath_edit(request: HttpRequest, number: str) -> HttpResponse:
    return correct(
        request, BathForm, where={"number": number}, title=lambda bath: f"Correct {number}", sentence=SENTENCE,
        then=Bath.get_absolute_url,
    )  # fmt: skip


def limit_edit(request: HttpRequest, number: str, constituent: str) -> HttpResponse:
    found = access.fetch(request, Bath, number=number)
    access.require(request, "write", BathLimit)
    if constituent not in Constituent.values:
        raise Http404("This bath has no such constituent.")
    label = Constituent(constituent).label
    limit = BathLimit.objects.filter(bath=found, constituent=constituent).first()
    form = BathLimitForm(request.POST or None, instance=limit or BathLimit(bath=found, constituent=constituent))
    return answer_form(
        request,
        form,
        title=f"Limits for {label}",
        verb="Save",
        back_url=found.get_absolute_url(),
        then=lambda _: found,
        sentence="Outside “look” an analysis is flagged; outside “stop” no run starts without a concession. "
        "A new acid copper bath is offered the usual bounds: judge them for yours.",
    )


def addition_add(request: HttpRequest, number: str) -> HttpResponse:
    found = access.fetch(request, Bath, number=number)
    return begin(
        request, AdditionForm, on={"bath": found}, title=f"Add to bath {number}", sentence=ORDER, caution=ACID,
        offer=lambda: {"added_by": access.party_of(request.user)} | _corrected(request, found),
        verb="Write it down", back_url=found.get_absolute_url(), then=lambda _: found,
    )  # fmt: skip


def _corrected(request: HttpRequest, bath: Bath) -> dict:
    """What the analysis asked for, where the person comes from there."""
    kind, number = request.GET.get("kind", ""), request.GET.get("after", "")
    known = kind in BathAddition.Kind.values
    return {
        "kind": kind if known else "",
        "what": BathAddition.Kind(kind).label if known else "",
        "analysis": bath.analyses.filter(number=number).first(),
    }


def addition_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, AdditionForm, where={"pk": pk}, related=("bath",), strikes="bath-addition", sentence=ORDER,
        caution=ACID, title=lambda row: f"Correct: {row}", then=lambda row: row.bath,
    )  # fmt: skip


urls = [
    path("baths/", bath_list, name="bath_list"),
    path("baths/new/", bath_add, name="bath_add"),
    path("baths/<str:number>/", bath, name="bath"),
    path("baths/<str:number>/edit/", bath_edit, name="bath_edit"),
    path("baths/<str:number>/limits/<str:constituent>/", limit_edit, name="limit_edit"),
    path("baths/<str:number>/additions/new/", addition_add, name="addition_add"),
    path("bath-additions/<int:pk>/edit/", addition_edit, name="addition_edit"),
]
