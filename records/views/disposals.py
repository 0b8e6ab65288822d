"""Giving a copy or a shell up: the decision and what was done, on the page of the thing."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from records import access
from records.forms.disposals import CarriedOutForm, DecisionForm
from records.models import Disposal, Item
from records.numbers import SERIES, next_number
from records.services.disposals import GIVEN_UP, carry_out, decide
from records.views.answering import answer_form

DECIDE = "The record and the number stay for ever; what ends is the piece. Nothing is done to it yet."
DONE = "What is left is photographed. From now on no label and no tag of it prints."
ROWS = Disposal.objects.select_related("item")


def _page_of(row: Disposal) -> str:
    return f"{row.get_absolute_url()}#disposal"


def disposal_add(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", Disposal)
    thing = access.fetch(request, Item.objects.filter(kind__in=GIVEN_UP, disposal=None), number=number)
    initial = {"number": next_number(Disposal, SERIES["disposal"])}
    form = DecisionForm(request.POST or None, instance=Disposal(item=thing), initial=initial)
    return answer_form(
        request, form, title=f"Give {number} up", number=number, sentence=DECIDE, verb="Keep the decision",
        back_url=thing.get_absolute_url(), act=_decide, then=_page_of,
    )  # fmt: skip


def _decide(form: DecisionForm) -> Disposal:
    return decide(disposal=form.save(commit=False))


def disposal_edit(request: HttpRequest, number: str) -> HttpResponse:
    row = access.fetch(request, ROWS, to="write", number=number)
    form = DecisionForm(request.POST or None, instance=row)
    return answer_form(
        request, form, title=f"Correct the decision {number}", number=row.item.number, verb="Save",
        back_url=_page_of(row), then=_page_of,
    )  # fmt: skip


def disposal_done(request: HttpRequest, number: str) -> HttpResponse:
    row = access.fetch(request, ROWS, to="carry out disposal", number=number)
    initial = {} if row.done_on else {"done_by": access.party_of(request.user)}
    form = CarriedOutForm(request.POST or None, instance=row, initial=initial)
    return answer_form(
        request, form, title=f"{row.item.number} is no more", number=row.item.number, sentence=DONE,
        verb="It is done", back_url=_page_of(row), then=_page_of,
        act=lambda form: carry_out(disposal=form.save(commit=False)),
    )  # fmt: skip


urls = [
    path("things/<str:number>/disposal/new/", disposal_add, name="disposal_add"),
    path("disposals/<str:number>/edit/", disposal_edit, name="disposal_edit"),
    path("disposals/<str:number>/done/", disposal_done, name="disposal_done"),
]
