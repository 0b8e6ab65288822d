"""Is it a copy? A guided examination of a piece, ending in one careful sentence."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from records import access
from records.forms.examinations import ExaminationForm
from records.models import Examination, Item
from records.views.answering import answer_form

SENTENCE = (
    "Go through the signs in turn; what you did not look for stays “not checked”. The sentence at the end follows from "
    "your answers, and none says that a piece is an original."
)
CAUTION = (
    "Nothing is scratched, opened, rung or wetted to find out. Wear clean gloves, hold the piece over a soft surface, "
    "and leave white or green powder alone: it may be poisonous."
)


def examination_list(request: HttpRequest, number: str) -> HttpResponse:
    item = access.fetch(request, Item, number=number)
    rows = item.examinations.select_related("examiner")
    return render(request, "records/examination_list.html", {"item": item, "examinations": rows})


def examination_add(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", Examination)
    item = access.fetch(request, Item, number=number)
    form = ExaminationForm(
        request.POST or None, instance=Examination(item=item), initial={"examiner": access.party_of(request.user)}
    )
    return answer_form(
        request, form, title=f"Is {number} a copy?", sentence=SENTENCE, verb="End the examination", caution=CAUTION,
        back_url=reverse("examination_list", args=[number]), then=Examination.get_absolute_url,
    )  # fmt: skip


def examination(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, Examination.objects.select_related("item", "examiner"), pk=pk)
    return render(request, "records/examination.html", {"examination": row, "item": row.item})


def examination_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, Examination.objects.select_related("item"), to="write", pk=pk)
    form = ExaminationForm(request.POST or None, instance=row)
    return answer_form(
        request, form, title=f"Correct the examination of {row.item.number}", sentence=SENTENCE, verb="Save",
        caution=CAUTION, back_url=row.get_absolute_url(), then=Examination.get_absolute_url,
    )  # fmt: skip


urls = [
    path("things/<str:number>/examinations/", examination_list, name="examination_list"),
    path("things/<str:number>/examinations/new/", examination_add, name="examination_add"),
    path("examinations/<int:pk>/", examination, name="examination"),
    path("examinations/<int:pk>/edit/", examination_edit, name="examination_edit"),
]
