"""Measured sizes and weights of a thing."""

from django.http import HttpRequest, HttpResponse
from django.urls import path, reverse

from records import access
from records.forms.measurements import MeasurementForm
from records.models import Item, Measurement, Party
from records.views.answering import answer_form

SENTENCE = "A measured number and where it was measured, so that the next person can measure there again."


def _page_of(row: Measurement) -> str:
    return f"{row.item.get_absolute_url()}#measurements"


def measurement_add(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", Measurement)
    item = access.fetch(request, Item, number=number)
    form = MeasurementForm(
        request.POST or None, instance=Measurement(item=item),
        initial={"what": request.GET.get("what", ""), "measured_by": Party.objects.filter(user=request.user).first()},
    )  # fmt: skip
    return answer_form(
        request, form, title=f"Measure {number}", sentence=SENTENCE, verb="Save the measurement",
        back_url=item.get_absolute_url(), then=_page_of,
    )  # fmt: skip


def measurement_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, Measurement.objects.select_related("item"), to="write", pk=pk)
    form = MeasurementForm(request.POST or None, instance=row)
    return answer_form(
        request, form, title=f"Correct the {row.get_what_display()} of {row.item.number}", verb="Save",
        back_url=_page_of(row), then=_page_of, strike_url=reverse("strike", args=["measurement", row.pk]),
    )  # fmt: skip


urls = [
    path("things/<str:number>/measurements/new/", measurement_add, name="measurement_add"),
    path("measurements/<int:pk>/edit/", measurement_edit, name="measurement_edit"),
]
