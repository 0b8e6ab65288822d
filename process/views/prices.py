"""Prices, each list from a day on: an old plan keeps the prices of its own time."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from process.chemistry.metals import written
from process.forms.supplies import PriceForm
from process.models import PriceList
from records import access
from records.views.answering import answer_form

SENTENCE = "A plan is reckoned with the youngest list that held when its run was to start."


def price_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", PriceList)
    rows = [(row, written(row.ion)) for row in PriceList.objects.all()[:50]]
    return render(request, "process/price_list.html", {"rows": rows, "sentence": SENTENCE})


def price_add(request: HttpRequest) -> HttpResponse:
    """A new list begins with the figures of the last."""
    access.require(request, "write", PriceList)
    last = PriceList.objects.first()
    copied = ("ion", "currency", "labour_money_h", "metal_money_kg", "energy_money_kwh", "bath_money", "bath_life_ah")
    offered = {name: getattr(last, name) for name in (*copied, "failure_pct")} if last else {}
    return _answer(request, PriceForm(request.POST or None, initial=offered), "Enter prices")


def price_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, PriceList, to="write", pk=pk)
    return _answer(request, PriceForm(request.POST or None, instance=row), f"Correct the {row}")


def _answer(request: HttpRequest, form: PriceForm, title: str) -> HttpResponse:
    back = reverse("price_list")
    return answer_form(
        request, form, title=title, sentence=SENTENCE, verb="Keep them", back_url=back, then=lambda _: back
    )


urls = [
    path("prices/", price_list, name="price_list"),
    path("prices/new/", price_add, name="price_add"),
    path("prices/<int:pk>/edit/", price_edit, name="price_edit"),
]
