"""Prices, each list from a day on: an old plan keeps the prices of its own time."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from process.chemistry.metals import written
from process.forms.supplies import PriceForm
from process.models import PriceList
from records import access
from records.views.writing import begin, correct

SENTENCE = "A plan is reckoned with the youngest list that held when its run was to start."


def price_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", PriceList)
    rows = [(row, written(row.ion)) for row in PriceList.objects.all()[:50]]
    return render(request, "process/price_list.html", {"rows": rows, "sentence": SENTENCE})


def price_add(request: HttpRequest) -> HttpResponse:
    return begin(
        request, PriceForm, title="Enter prices", sentence=SENTENCE, verb="Keep them", offer=_last_figures,
        back_url=_list(), then=_list,
    )  # fmt: skip


def _last_figures() -> dict:
    """A new list begins with the figures of the last."""
    last = PriceList.objects.first()
    copied = ("ion", "currency", "labour_money_h", "metal_money_kg", "energy_money_kwh", "bath_money", "bath_life_ah")
    return {name: getattr(last, name) for name in (*copied, "failure_pct")} if last else {}


def price_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, PriceForm, where={"pk": pk}, title=lambda row: f"Correct the {row}", sentence=SENTENCE,
        verb="Keep them", then=_list,
    )  # fmt: skip


def _list(row: PriceList | None = None) -> str:
    return reverse("price_list")


urls = [
    path("prices/", price_list, name="price_list"),
    path("prices/new/", price_add, name="price_add"),
    path("prices/<int:pk>/edit/", price_edit, name="price_edit"),
]
