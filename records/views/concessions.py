"""Concessions: a named person lets work go on, for a reason."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from records import access, clock
from records.forms.concessions import ConcessionForm
from records.models import Concession
from records.services.permissions import give_concession
from records.views.answering import answer_form

SENTENCE = (
    "Work goes on without some of the evidence that a gate asks for. "
    "Your name, role and reason stand beside it for ever."
)


def concession_add(request: HttpRequest) -> HttpResponse:
    party, role = access.signer(request, "give concession")
    asked = request.GET
    form = ConcessionForm(
        request.POST or None, numbers=asked.getlist("item"), gate=asked.get("gate", ""), names=asked.getlist("check")
    )
    return answer_form(
        request,
        form,
        title="Write a concession",
        sentence=SENTENCE,
        verb="Give the concession",
        back_url=reverse("home"),
        act=lambda form: give_concession(given_by=party, role=role, **form.cleaned_data),
        then=Concession.get_absolute_url,
    )


def concession(request: HttpRequest, number: str) -> HttpResponse:
    rows = Concession.objects.select_related("given_by", "commission").prefetch_related("items")
    found = access.fetch(request, rows, number=number)
    has_ended = bool(found.valid_to and found.valid_to < clock.today())
    return render(request, "records/concession.html", {"concession": found, "has_ended": has_ended})


urls = [
    path("concessions/new/", concession_add, name="concession_add"),
    path("concessions/<str:number>/", concession, name="concession"),
]
