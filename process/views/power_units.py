"""Power units: what each can give and hold, and what it does when the mains fail."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from process.forms.supplies import PowerUnitForm
from process.models import PowerUnit
from records import access
from records.views.answering import answer_form

SENTENCE = "Range, smallest step, meter, polarity, and what it does when the mains come back."


def power_unit_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", PowerUnit)
    return render(request, "process/power_unit_list.html", {"rows": PowerUnit.objects.all(), "sentence": SENTENCE})


def power_unit_add(request: HttpRequest) -> HttpResponse:
    access.require(request, "write", PowerUnit)
    return _answer(request, PowerUnitForm(request.POST or None), "Enter a power unit")


def power_unit_edit(request: HttpRequest, number: str) -> HttpResponse:
    unit = access.fetch(request, PowerUnit, to="write", number=number)
    return _answer(request, PowerUnitForm(request.POST or None, instance=unit), f"Correct {unit.number}")


def _answer(request: HttpRequest, form: PowerUnitForm, title: str) -> HttpResponse:
    back = reverse("power_unit_list")
    return answer_form(
        request, form, title=title, sentence=SENTENCE, verb="Keep it", back_url=back, then=lambda _: back
    )


urls = [
    path("power-units/", power_unit_list, name="power_unit_list"),
    path("power-units/new/", power_unit_add, name="power_unit_add"),
    path("power-units/<str:number>/edit/", power_unit_edit, name="power_unit_edit"),
]
