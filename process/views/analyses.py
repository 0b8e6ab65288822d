"""Analyses of a bath: titration volumes in, grams per litre out."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from process.forms.analyses import AnalysisForm
from process.models import Bath
from records import access
from records.views.writing import begin, correct

SENTENCE = "Volumes as read from the burette; the concentrations are worked out and judged by the bath’s limits."
CAUTION = (
    "Acid and copper salts: gloves, eye protection, no waste into the drain. Local rules and licensed practice decide."
)


def analysis_add(request: HttpRequest, number: str) -> HttpResponse:
    bath = access.fetch(request, Bath, number=number)
    return begin(
        request, AnalysisForm, on={"bath": bath}, title=f"Analyse bath {number}", sentence=SENTENCE, caution=CAUTION,
        offer=lambda: {"analyst": access.party_of(request.user)}, verb="Keep the analysis",
        back_url=bath.get_absolute_url(), then=lambda _: bath,
    )  # fmt: skip


def analysis_edit(request: HttpRequest, number: str) -> HttpResponse:
    return correct(
        request, AnalysisForm, where={"number": number}, related=("bath",), strikes="bath-analysis",
        sentence=SENTENCE, title=lambda row: f"Correct {number}", then=lambda row: row.bath,
    )  # fmt: skip


urls = [
    path("baths/<str:number>/analyses/new/", analysis_add, name="analysis_add"),
    path("analyses/<str:number>/edit/", analysis_edit, name="analysis_edit"),
]
