"""Specifications: what the copy must become."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path

from records import access
from records.forms.commissions import SpecificationForm
from records.models import Commission, Specification
from records.views.answering import answer_form

SENTENCE = "Thickness, finish, filling and mark, before the first mould: the accepted copy is compared with this."


def specification_list(request: HttpRequest, number: str) -> HttpResponse:
    """Everything that the copies of a commission must become."""
    commission = access.fetch(request, Commission, number=number)
    rows = commission.specifications.select_related("item", "signed_by")
    context = {"commission": commission, "specifications": rows}
    return render(request, "records/specification_list.html", context)


def specification_add(request: HttpRequest, number: str) -> HttpResponse:
    commission = access.fetch(request, Commission, number=number)
    access.require(request, "write", Specification)
    form = SpecificationForm(
        request.POST or None, instance=Specification(commission=commission), commission=commission,
        initial={"item": commission.originals.first()},
    )  # fmt: skip
    return answer_form(request, form, title=f"Specify a copy for {commission.number}", sentence=SENTENCE, verb="Keep",
                       back_url=commission.get_absolute_url(), then=lambda _: commission)  # fmt: skip


def specification_edit(request: HttpRequest, pk: int) -> HttpResponse:
    found = access.fetch(request, Specification.objects.select_related("commission"), to="write", pk=pk)
    form = SpecificationForm(request.POST or None, instance=found, commission=found.commission)
    return answer_form(request, form, title=str(found), sentence=SENTENCE, verb="Keep",
                       back_url=found.commission.get_absolute_url(), then=lambda _: found.commission)  # fmt: skip


urls = [
    path("commissions/<str:number>/specifications/", specification_list, name="specification_list"),
    path("commissions/<str:number>/specifications/new/", specification_add, name="specification_add"),
    path("specifications/<int:pk>/edit/", specification_edit, name="specification_edit"),
]
