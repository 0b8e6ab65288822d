"""Baths: limits, analyses, additions and the ampere-hour ledger."""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from process.forms.baths import AdditionForm, BathForm, BathLimitForm
from process.models import Bath, BathAddition, BathLimit, Constituent
from process.summaries.bath_limits import limit_lines
from process.summaries.bath_standings import standings
from process.summaries.baths import analysis_standing, analysis_summary, bath_ledger
from process.summaries.evenness import throw_of
from records import access, clock
from records.views.answering import answer_form

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
    access.require(request, "write", Bath)
    form = BathForm(request.POST or None)
    return answer_form(
        request,
        form,
        title="Enter a bath",
        sentence=SENTENCE,
        verb="Enter it",
        back_url=reverse("bath_list"),
        then=Bath.get_absolute_url,
    )


def bath(request: HttpRequest, number: str) -> HttpResponse:
    found = access.fetch(request, Bath.objects.select_related("place").prefetch_related("limits"), number=number)
    analyses = list(found.analyses.select_related("analyst")[:50])
    for analysis in analyses:
        analysis.bath = found
    ledger = bath_ledger(found)
    context = {
        "bath": found,
        "standing": analysis_standing(found, clock.today(), ledger),
        "analyses": [analysis_summary(analysis) for analysis in analyses],
        "ledger": ledger,
        "limits": limit_lines(found),
        "throws": [throw_of(test) for test in found.throw_tests.all()[:10]],
        "additions": found.additions.select_related("added_by")[:50],
    }
    return render(request, "process/bath.html", context)


def bath_edit(request: HttpRequest, number: str) -> HttpResponse:
    found = access.fetch(request, Bath, to="write", number=number)
    form = BathForm(request.POST or None, instance=found)
    return answer_form(
        request,
        form,
        title=f"Correct {number}",
        sentence=SENTENCE,
        verb="Save",
        back_url=found.get_absolute_url(),
        then=Bath.get_absolute_url,
    )


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
        sentence="Outside “look” an analysis is flagged; outside “stop” no run starts without a concession.",
    )


def addition_add(request: HttpRequest, number: str) -> HttpResponse:
    found = access.fetch(request, Bath, number=number)
    access.require(request, "write", BathAddition)
    form = AdditionForm(
        request.POST or None, instance=BathAddition(bath=found), initial={"added_by": access.party_of(request.user)}
    )
    return answer_form(
        request,
        form,
        title=f"Add to bath {number}",
        verb="Write it down",
        back_url=found.get_absolute_url(),
        then=lambda _: found,
        sentence="Level to the mark, mix, sample, analyse, correct, mix, analyse again.",
        caution="Acid goes into the bath slowly, never water into acid. Eye protection; local rules decide.",
    )


urls = [
    path("baths/", bath_list, name="bath_list"),
    path("baths/new/", bath_add, name="bath_add"),
    path("baths/<str:number>/", bath, name="bath"),
    path("baths/<str:number>/edit/", bath_edit, name="bath_edit"),
    path("baths/<str:number>/limits/<str:constituent>/", limit_edit, name="limit_edit"),
    path("baths/<str:number>/additions/new/", addition_add, name="addition_add"),
]
