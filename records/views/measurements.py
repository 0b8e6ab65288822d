"""Measured sizes and weights of a thing."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from records import access
from records.forms.measurements import MeasurementForm
from records.models import Item, Measurement, Party
from records.views.writing import begin, correct

SENTENCE = "A measured number and where it was measured, so that the next person can measure there again."


def _page_of(row: Measurement) -> str:
    return f"{row.item.get_absolute_url()}#measurements"


def _offered(request: HttpRequest) -> dict:
    person = Party.objects.filter(user=request.user).first()
    return {"what": request.GET.get("what", ""), "measured_by": person}


def measurement_add(request: HttpRequest, number: str) -> HttpResponse:
    item = access.fetch(request, Item, number=number)
    return begin(
        request, MeasurementForm, on={"item": item}, title=f"Measure {number}", sentence=SENTENCE,
        offer=lambda: _offered(request),
        verb="Save the measurement", back_url=item.get_absolute_url(), then=_page_of,
    )  # fmt: skip


def measurement_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, MeasurementForm, where={"pk": pk}, related=("item",), strikes="measurement", then=_page_of,
        title=lambda row: f"Correct the {row.get_what_display()} of {row.item.number}",
    )  # fmt: skip


urls = [
    path("things/<str:number>/measurements/new/", measurement_add, name="measurement_add"),
    path("measurements/<int:pk>/edit/", measurement_edit, name="measurement_edit"),
]
