"""Analyses of a bath: titration volumes in, grams per litre out."""

from django.http import HttpRequest, HttpResponse
from django.urls import path, reverse

from process.forms.analyses import AnalysisForm
from process.models import Bath, BathAnalysis
from records import access
from records.views.answering import answer_form

SENTENCE = "Volumes as read from the burette; the concentrations are worked out and judged by the bath’s limits."
CAUTION = (
    "Acid and copper salts: gloves, eye protection, no waste into the drain. Local rules and licensed practice decide."
)


def analysis_add(request: HttpRequest, number: str) -> HttpResponse:
    bath = access.fetch(request, Bath, number=number)
    access.require(request, "write", BathAnalysis)
    initial = {"analyst": access.party_of(request.user)}
    form = AnalysisForm(request.POST or None, instance=BathAnalysis(bath=bath), initial=initial)
    return answer_form(
        request,
        form,
        title=f"Analyse bath {number}",
        sentence=SENTENCE,
        verb="Keep the analysis",
        caution=CAUTION,
        back_url=bath.get_absolute_url(),
        then=lambda _: bath,
    )


def analysis_edit(request: HttpRequest, number: str) -> HttpResponse:
    analysis = access.fetch(request, BathAnalysis.objects.select_related("bath"), to="write", number=number)
    form = AnalysisForm(request.POST or None, instance=analysis)
    return answer_form(request, form, title=f"Correct {number}", sentence=SENTENCE, verb="Save",
                       strike_url=reverse("strike", args=["bath-analysis", analysis.pk]),
                       back_url=analysis.bath.get_absolute_url(), then=lambda _: analysis.bath)  # fmt: skip


urls = [
    path("baths/<str:number>/analyses/new/", analysis_add, name="analysis_add"),
    path("analyses/<str:number>/edit/", analysis_edit, name="analysis_edit"),
]
