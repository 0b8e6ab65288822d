"""Density by weighing in air and in water; refused, with the reason, for whatever water would harm."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from process.forms.hydrostatics import HydrostaticForm
from process.models import HydrostaticWeighing
from process.summaries.wetting import refusal_of
from records import access
from records.models import Item
from records.views.writing import begin, correct

SENTENCE = "Two readings of one balance and the warmth of the water; density and ± are worked out."
CAUTION = "Never for plaster, cores, open seams, corroded or gilded-porous pieces. The conservator decides."


def hydrostatic_add(request: HttpRequest, number: str) -> HttpResponse:
    item = access.fetch(request, Item, number=number)
    return begin(
        request, HydrostaticForm, on={"item": item}, offer=lambda: {"weighed_by": access.party_of(request.user)},
        title=f"Weigh {number} in water", sentence=refusal_of(item) or SENTENCE, caution=CAUTION,
        verb="Keep the weighing", back_url=item.get_absolute_url(), then=HydrostaticWeighing.get_absolute_url,
    )  # fmt: skip


def hydrostatic_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, HydrostaticForm, where={"pk": pk}, related=("item",), strikes="hydrostatic", sentence=SENTENCE,
        caution=CAUTION, title=lambda row: f"Correct a {row}", then=HydrostaticWeighing.get_absolute_url,
    )  # fmt: skip


urls = [
    path("things/<str:number>/in-water/new/", hydrostatic_add, name="hydrostatic_add"),
    path("in-water/<int:pk>/edit/", hydrostatic_edit, name="hydrostatic_edit"),
]
