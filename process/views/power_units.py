"""Power units: what each can give and hold, and what it does when the mains fail."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from process.forms.supplies import PowerUnitForm
from process.models import PowerUnit
from records import access
from records.views.writing import begin, correct

SENTENCE = "Range, smallest step, meter, polarity, and what it does when the mains come back."


def power_unit_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", PowerUnit)
    return render(request, "process/power_unit_list.html", {"rows": PowerUnit.objects.all(), "sentence": SENTENCE})


def power_unit_add(request: HttpRequest) -> HttpResponse:
    return begin(
        request, PowerUnitForm, title="Enter a power unit", sentence=SENTENCE, verb="Keep it", back_url=_list(),
        then=_list,
    )  # fmt: skip


def power_unit_edit(request: HttpRequest, number: str) -> HttpResponse:
    return correct(
        request, PowerUnitForm, where={"number": number}, title=lambda unit: f"Correct {unit.number}",
        sentence=SENTENCE, verb="Keep it", then=_list,
    )  # fmt: skip


def _list(unit: PowerUnit | None = None) -> str:
    return reverse("power_unit_list")


urls = [
    path("power-units/", power_unit_list, name="power_unit_list"),
    path("power-units/new/", power_unit_add, name="power_unit_add"),
    path("power-units/<str:number>/edit/", power_unit_edit, name="power_unit_edit"),
]
