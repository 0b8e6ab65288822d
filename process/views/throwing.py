"""Throw tests of a bath: a cell with one anode between a near and a far cathode."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from process.forms.supplies import ThrowTestForm
from process.models import Bath, ThrowTest
from records import access
from records.views.answering import answer_form

SENTENCE = "One anode between two equal cathodes, one near and one far; both are weighed before and after."
CAUTION = "Bath solution burns: gloves, eye protection, and the cell goes back into the bath, not into the drain."


def throw_test_add(request: HttpRequest, number: str) -> HttpResponse:
    bath = access.fetch(request, Bath, number=number)
    access.require(request, "write", ThrowTest)
    form = ThrowTestForm(request.POST or None, instance=ThrowTest(bath=bath), user=request.user)
    return _answer(request, form, f"Throw test of {bath.number}")


def throw_test_edit(request: HttpRequest, pk: int) -> HttpResponse:
    test = access.fetch(request, ThrowTest.objects.select_related("bath"), to="write", pk=pk)
    form = ThrowTestForm(request.POST or None, instance=test, user=request.user)
    return _answer(request, form, f"Correct the throw test of {test.bath.number}")


def _answer(request: HttpRequest, form: ThrowTestForm, title: str) -> HttpResponse:
    return answer_form(
        request, form, title=title, sentence=SENTENCE, verb="Keep the test", caution=CAUTION,
        back_url=form.instance.get_absolute_url(), then=ThrowTest.get_absolute_url,
    )  # fmt: skip


urls = [
    path("baths/<str:number>/throwing/new/", throw_test_add, name="throw_test_add"),
    path("throwing/<int:pk>/edit/", throw_test_edit, name="throw_test_edit"),
]
