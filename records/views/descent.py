"""Steps of descent written by hand; those of the workshop come with the mould, the shell and the making-up."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from records import access
from records.forms.descent import DescentForm
from records.models import DescentLink, Item
from records.views.writing import begin, correct

SENTENCE = (
    "What it was taken from, and how. Generation and polarity follow from this; an unknown first step stays "
    "unknown and is printed as such."
)


def _page_of(row: DescentLink) -> str:
    return row.target.get_absolute_url()


def descent_add(request: HttpRequest, number: str) -> HttpResponse:
    item = access.fetch(request, Item, number=number)
    return begin(
        request, DescentForm, on={"target": item}, title=f"What {number} was taken from", sentence=SENTENCE,
        verb="Save the step", back_url=item.get_absolute_url(), then=_page_of,
    )  # fmt: skip


def descent_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, DescentForm, where={"pk": pk}, related=("target", "source"), sentence=SENTENCE, then=_page_of,
        title=lambda row: f"Correct the descent of {row.target.number}",
    )  # fmt: skip


urls = [
    path("things/<str:number>/descent/new/", descent_add, name="descent_add"),
    path("descent/<int:pk>/edit/", descent_edit, name="descent_edit"),
]
