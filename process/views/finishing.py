"""Finish steps of a copy."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from process.forms.finishing import FinishForm
from process.models import FinishStep
from records import access
from records.models import Item
from records.views.answering import answer_form

COPIES = Item.objects.made_here().select_related("making_up")
SENTENCE = "What was done to the surface, in the order in which it was done."


def _answer(request: HttpRequest, form: FinishForm, title: str) -> HttpResponse:
    copy = form.instance.copy
    return answer_form(
        request, form, title=title, number=copy.number, sentence=SENTENCE, verb="Keep the step", caution=form.caution,
        back_url=f"{copy.get_absolute_url()}#making", then=lambda step: f"{copy.get_absolute_url()}#making",
    )  # fmt: skip


def finish_add(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", FinishStep)
    copy = access.fetch(request, COPIES, number=number)
    initial = {"done_by": access.party_of(request.user)}
    return _answer(
        request, FinishForm(request.POST or None, instance=FinishStep(copy=copy), initial=initial), "A finish step"
    )


def finish_edit(request: HttpRequest, pk: int) -> HttpResponse:
    step = access.fetch(request, FinishStep.objects.select_related("copy__making_up"), to="write", pk=pk)
    return _answer(request, FinishForm(request.POST or None, instance=step), "Correct a finish step")


urls = [
    path("copies/<str:number>/finish/new/", finish_add, name="finish_add"),
    path("finish/<int:pk>/edit/", finish_edit, name="finish_edit"),
]
