"""The parts of a mould, and the wear that its uses left."""

from typing import Any

from django.http import HttpRequest, HttpResponse
from django.urls import path

from process.forms.mould_care import MouldPartForm, MouldWearForm
from process.models import Mould, MouldPart, MouldWear
from records import access
from records.views.writing import begin, correct

PART = "Each piece that can lie apart has its letter; all of them are named when the mould is destroyed or returned."
WEAR = "One feature a line, seen after a use: what it is, how far it reaches, and whether the mould still serves."


def _begin(request: HttpRequest, number: str, form: type, **answer: Any) -> HttpResponse:
    mould = access.fetch(request, Mould.objects.select_related("item"), item__number=number)
    return begin(
        request, form, on={"mould": mould}, told={"user": request.user}, back_url=f"{mould.get_absolute_url()}#mould",
        then=form._meta.model.get_absolute_url, **answer,
    )  # fmt: skip


def mould_part_add(request: HttpRequest, number: str) -> HttpResponse:
    return _begin(request, number, MouldPartForm, title=f"A part of {number}", sentence=PART, verb="Keep the part")


def mould_part_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, MouldPartForm, where={"pk": pk}, related=("mould__item", "place"), sentence=PART,
        title=lambda row: f"Correct {row}", then=MouldPart.get_absolute_url,
    )  # fmt: skip


def mould_wear_add(request: HttpRequest, number: str) -> HttpResponse:
    return _begin(request, number, MouldWearForm, title=f"Wear of {number}", sentence=WEAR, verb="Keep what was seen")


def mould_wear_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, MouldWearForm, where={"pk": pk}, related=("mould__item",), strikes="wear", sentence=WEAR,
        title=lambda row: f"Correct {row}", then=MouldWear.get_absolute_url,
    )  # fmt: skip


urls = [
    path("moulds/<str:number>/parts/new/", mould_part_add, name="mould_part_add"),
    path("mould-parts/<int:pk>/edit/", mould_part_edit, name="mould_part_edit"),
    path("moulds/<str:number>/wear/new/", mould_wear_add, name="mould_wear_add"),
    path("mould-wear/<int:pk>/edit/", mould_wear_edit, name="mould_wear_edit"),
]
