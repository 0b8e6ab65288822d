"""Measuring a mould again: how far it has shrunk since it was taken."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from process.forms.gauges import MouldGaugeForm
from process.models import Mould, MouldGauge
from records import access
from records.views.writing import begin, correct

SENTENCE = "One length on the mould beside the same length of the piece; the change in per cent is worked out."


def gauge_add(request: HttpRequest, number: str) -> HttpResponse:
    mould = access.fetch(request, Mould.objects.select_related("item"), item__number=number)
    return begin(
        request, MouldGaugeForm, on={"mould": mould}, told={"user": request.user}, title=f"Measure {number} again",
        sentence=SENTENCE, verb="Keep the measurement", back_url=f"{mould.get_absolute_url()}#gauges",
        then=MouldGauge.get_absolute_url,
    )  # fmt: skip


def gauge_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, MouldGaugeForm, where={"pk": pk}, related=("mould__item",), strikes="gauge", sentence=SENTENCE,
        title=lambda row: f"Correct a {row}", then=MouldGauge.get_absolute_url,
    )  # fmt: skip


urls = [
    path("moulds/<str:number>/lengths/new/", gauge_add, name="gauge_add"),
    path("mould-lengths/<int:pk>/edit/", gauge_edit, name="gauge_edit"),
]
