"""Work at the bath: services, anodes and their weighings."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from process.forms.bath_work import AnodeForm, AnodeWeighingForm, ServiceForm
from process.models import Anode, AnodeWeighing, Bath
from records import access
from records.views.writing import begin, correct

WORK = "Filter, bags, carbon, water, what was carried out, sludge: the ledger counts from it, the balance counts it in."
ANODES = "Each anode by its own name: what they lose together is what the bath and the pieces gain."
WEIGH = "Rinsed, dried, without bag and hook."
CAUTION = (
    "Acid and copper salts: gloves, eye protection. Sludge, filters and bags are waste that local rules dispose of."
)


def service_add(request: HttpRequest, number: str) -> HttpResponse:
    bath = access.fetch(request, Bath, number=number)
    return begin(
        request, ServiceForm, on={"bath": bath}, title=f"Work at bath {number}", sentence=WORK, caution=CAUTION,
        offer=lambda: {"done_by": access.party_of(request.user), "kind": request.GET.get("kind", "")},
        verb="Write it down", back_url=bath.get_absolute_url(), then=lambda _: bath,
    )  # fmt: skip


def service_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, ServiceForm, where={"pk": pk}, related=("bath",), strikes="bath-work", sentence=WORK,
        title=lambda row: f"Correct: {row}", then=lambda row: row.bath,
    )  # fmt: skip


def anode_add(request: HttpRequest, number: str) -> HttpResponse:
    bath = access.fetch(request, Bath, number=number)
    return begin(
        request, AnodeForm, on={"bath": bath}, title=f"Hang an anode in {number}", sentence=ANODES,
        verb="Write it down", back_url=bath.get_absolute_url(), then=Anode.get_absolute_url,
    )  # fmt: skip


def anode_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, AnodeForm, where={"pk": pk}, related=("bath",), sentence=ANODES,
        title=lambda row: f"Correct anode {row}", then=Anode.get_absolute_url,
    )  # fmt: skip


def anode_weigh(request: HttpRequest, pk: int) -> HttpResponse:
    anode = access.fetch(request, Anode.objects.select_related("bath"), pk=pk)
    return begin(
        request, AnodeWeighingForm, on={"anode": anode}, title=f"Weigh anode {anode}", sentence=WEIGH,
        offer=lambda: {"weighed_by": access.party_of(request.user)}, verb="Keep the weighing",
        back_url=anode.get_absolute_url(), then=AnodeWeighing.get_absolute_url,
    )  # fmt: skip


def anode_weighing_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, AnodeWeighingForm, where={"pk": pk}, related=("anode__bath",), strikes="anode-weighing",
        sentence=WEIGH, title=lambda row: f"Correct a weighing of anode {row.anode}",
        then=AnodeWeighing.get_absolute_url,
    )  # fmt: skip


urls = [
    path("baths/<str:number>/work/new/", service_add, name="service_add"),
    path("bath-work/<int:pk>/edit/", service_edit, name="service_edit"),
    path("baths/<str:number>/anodes/new/", anode_add, name="anode_add"),
    path("anodes/<int:pk>/edit/", anode_edit, name="anode_edit"),
    path("anodes/<int:pk>/weigh/", anode_weigh, name="anode_weigh"),
    path("anode-weighings/<int:pk>/edit/", anode_weighing_edit, name="anode_weighing_edit"),
]
