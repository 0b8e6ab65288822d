"""Density by weighing in air and in water; refused, with the reason, for whatever water would harm."""

from django.http import HttpRequest, HttpResponse
from django.urls import path, reverse

from process.forms.hydrostatics import HydrostaticForm
from process.models import HydrostaticWeighing
from process.summaries.wetting import refusal_of
from records import access
from records.models import Item
from records.views.answering import answer_form

SENTENCE = "Two readings of one balance and the warmth of the water; density and ± are worked out."
CAUTION = "Never for plaster, cores, open seams, corroded or gilded-porous pieces. The conservator decides."


def hydrostatic_add(request: HttpRequest, number: str) -> HttpResponse:
    item = access.fetch(request, Item, number=number)
    access.require(request, "write", HydrostaticWeighing)
    offered = {"weighed_by": access.party_of(request.user)}
    form = HydrostaticForm(request.POST or None, instance=HydrostaticWeighing(item=item), initial=offered)
    return answer_form(
        request, form, title=f"Weigh {number} in water", sentence=refusal_of(item) or SENTENCE, caution=CAUTION,
        verb="Keep the weighing", back_url=item.get_absolute_url(), then=HydrostaticWeighing.get_absolute_url,
    )  # fmt: skip


def hydrostatic_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, HydrostaticWeighing.objects.select_related("item"), to="write", pk=pk)
    form = HydrostaticForm(request.POST or None, instance=row)
    return answer_form(
        request, form, title=f"Correct a {row}", sentence=SENTENCE, caution=CAUTION, verb="Save",
        strike_url=reverse("strike", args=["hydrostatic", row.pk]), back_url=row.get_absolute_url(),
        then=HydrostaticWeighing.get_absolute_url,
    )  # fmt: skip


urls = [
    path("things/<str:number>/in-water/new/", hydrostatic_add, name="hydrostatic_add"),
    path("in-water/<int:pk>/edit/", hydrostatic_edit, name="hydrostatic_edit"),
]
