"""Specifications: what the copy must become."""

from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import path
from django.views.decorators.http import require_POST

from records import access
from records.forms.commissions import SpecificationForm
from records.models import Commission, Specification
from records.services.signing import refuse_unread, sign
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
    if found.is_signed:
        messages.warning(request, "It is signed and stays as it is: write another one if more is asked of the copy.")
        return redirect(found)
    form = SpecificationForm(request.POST or None, instance=found, commission=found.commission)
    return answer_form(request, form, title=str(found), sentence=SENTENCE, verb="Keep",
                       back_url=found.commission.get_absolute_url(), then=lambda _: found.commission)  # fmt: skip


@require_POST
def specification_sign(request: HttpRequest, pk: int) -> HttpResponse:
    found = access.fetch(request, Specification.objects.select_related("commission"), to="sign specification", pk=pk)
    party, role = access.signer(request, "sign specification")
    try:
        refuse_unread(found, request.POST.get("version"))
        sign(row=found, party=party, role=role)
    except ValidationError as error:
        messages.error(request, " ".join(error.messages))
    return redirect(found)


urls = [
    path("specifications/<int:pk>/sign/", specification_sign, name="specification_sign"),
    path("commissions/<str:number>/specifications/", specification_list, name="specification_list"),
    path("commissions/<str:number>/specifications/new/", specification_add, name="specification_add"),
    path("specifications/<int:pk>/edit/", specification_edit, name="specification_edit"),
]
