"""Measuring a mould again: how far it has shrunk since it was taken."""

from django.http import HttpRequest, HttpResponse
from django.urls import path, reverse

from process.forms.gauges import MouldGaugeForm
from process.models import Mould, MouldGauge
from records import access
from records.views.answering import answer_form

SENTENCE = "One length on the mould beside the same length of the piece; the change in per cent is worked out."


def gauge_add(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", MouldGauge)
    mould = access.fetch(request, Mould.objects.select_related("item"), item__number=number)
    form = MouldGaugeForm(request.POST or None, instance=MouldGauge(mould=mould), user=request.user)
    return answer_form(
        request, form, title=f"Measure {number} again", sentence=SENTENCE, verb="Keep the measurement",
        back_url=f"{mould.get_absolute_url()}#gauges", then=MouldGauge.get_absolute_url,
    )  # fmt: skip


def gauge_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, MouldGauge.objects.select_related("mould__item"), to="write", pk=pk)
    form = MouldGaugeForm(request.POST or None, instance=row)
    return answer_form(
        request, form, title=f"Correct a {row}", sentence=SENTENCE, verb="Save",
        strike_url=reverse("strike", args=["gauge", row.pk]), back_url=row.get_absolute_url(),
        then=MouldGauge.get_absolute_url,
    )  # fmt: skip


urls = [
    path("moulds/<str:number>/lengths/new/", gauge_add, name="gauge_add"),
    path("mould-lengths/<int:pk>/edit/", gauge_edit, name="gauge_edit"),
]
