"""Work at the bath: services, anodes and their weighings."""

from django.http import HttpRequest, HttpResponse
from django.urls import path, reverse

from process.forms.bath_work import AnodeForm, AnodeWeighingForm, ServiceForm
from process.models import Anode, AnodeWeighing, Bath, BathService
from records import access
from records.views.answering import answer_form

WORK = "Filter, bags, carbon, water, what was carried out, sludge: the ledger counts from it, the balance counts it in."
ANODES = "Each anode by its own name: what they lose together is what the bath and the pieces gain."
WEIGH = "Rinsed, dried, without bag and hook."
CAUTION = (
    "Acid and copper salts: gloves, eye protection. Sludge, filters and bags are waste that local rules dispose of."
)


def service_add(request: HttpRequest, number: str) -> HttpResponse:
    bath = access.fetch(request, Bath, number=number)
    access.require(request, "write", BathService)
    offered = {"done_by": access.party_of(request.user), "kind": request.GET.get("kind", "")}
    form = ServiceForm(request.POST or None, instance=BathService(bath=bath), initial=offered)
    return answer_form(request, form, title=f"Work at bath {number}", sentence=WORK, verb="Write it down",
                       caution=CAUTION, back_url=bath.get_absolute_url(), then=lambda _: bath)  # fmt: skip


def service_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, BathService.objects.select_related("bath"), to="write", pk=pk)
    form = ServiceForm(request.POST or None, instance=row)
    return answer_form(request, form, title=f"Correct: {row}", sentence=WORK, verb="Save",
                       strike_url=reverse("strike", args=["bath-work", row.pk]),
                       back_url=row.bath.get_absolute_url(), then=lambda row: row.bath)  # fmt: skip


def anode_add(request: HttpRequest, number: str) -> HttpResponse:
    bath = access.fetch(request, Bath, number=number)
    access.require(request, "write", Anode)
    form = AnodeForm(request.POST or None, instance=Anode(bath=bath))
    return answer_form(request, form, title=f"Hang an anode in {number}", sentence=ANODES, verb="Write it down",
                       back_url=bath.get_absolute_url(), then=Anode.get_absolute_url)  # fmt: skip


def anode_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, Anode.objects.select_related("bath"), to="write", pk=pk)
    form = AnodeForm(request.POST or None, instance=row)
    return answer_form(request, form, title=f"Correct anode {row}", sentence=ANODES, verb="Save",
                       back_url=row.get_absolute_url(), then=Anode.get_absolute_url)  # fmt: skip


def anode_weigh(request: HttpRequest, pk: int) -> HttpResponse:
    anode = access.fetch(request, Anode.objects.select_related("bath"), pk=pk)
    access.require(request, "write", AnodeWeighing)
    offered = {"weighed_by": access.party_of(request.user)}
    form = AnodeWeighingForm(request.POST or None, instance=AnodeWeighing(anode=anode), initial=offered)
    return answer_form(request, form, title=f"Weigh anode {anode}", sentence=WEIGH, verb="Keep the weighing",
                       back_url=anode.get_absolute_url(), then=AnodeWeighing.get_absolute_url)  # fmt: skip


def anode_weighing_edit(request: HttpRequest, pk: int) -> HttpResponse:
    rows = AnodeWeighing.objects.select_related("anode__bath")
    row = access.fetch(request, rows, to="write", pk=pk)
    form = AnodeWeighingForm(request.POST or None, instance=row)
    return answer_form(request, form, title=f"Correct a weighing of anode {row.anode}", sentence=WEIGH, verb="Save",
                       strike_url=reverse("strike", args=["anode-weighing", row.pk]),
                       back_url=row.get_absolute_url(), then=AnodeWeighing.get_absolute_url)  # fmt: skip


urls = [
    path("baths/<str:number>/work/new/", service_add, name="service_add"),
    path("bath-work/<int:pk>/edit/", service_edit, name="service_edit"),
    path("baths/<str:number>/anodes/new/", anode_add, name="anode_add"),
    path("anodes/<int:pk>/edit/", anode_edit, name="anode_edit"),
    path("anodes/<int:pk>/weigh/", anode_weigh, name="anode_weigh"),
    path("anode-weighings/<int:pk>/edit/", anode_weighing_edit, name="anode_weighing_edit"),
]
