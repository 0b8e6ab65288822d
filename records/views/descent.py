"""Steps of descent written by hand; those of the workshop come with the mould, the shell and the making-up."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from records import access
from records.forms.descent import DescentForm
from records.models import DescentLink, Item
from records.views.answering import answer_form

SENTENCE = (
    "What it was taken from, and how. Generation and polarity follow from this; an unknown first step stays "
    "unknown and is printed as such."
)


def _page_of(row: DescentLink) -> str:
    return row.target.get_absolute_url()


def descent_add(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", DescentLink)
    item = access.fetch(request, Item, number=number)
    form = DescentForm(request.POST or None, instance=DescentLink(target=item))
    return answer_form(
        request, form, title=f"What {number} was taken from", sentence=SENTENCE, verb="Save the step",
        back_url=item.get_absolute_url(), then=_page_of,
    )  # fmt: skip


def descent_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, DescentLink.objects.select_related("target", "source"), to="write", pk=pk)
    form = DescentForm(request.POST or None, instance=row)
    return answer_form(
        request, form, title=f"Correct the descent of {row.target.number}", sentence=SENTENCE, verb="Save",
        back_url=_page_of(row), then=_page_of,
    )  # fmt: skip


urls = [
    path("things/<str:number>/descent/new/", descent_add, name="descent_add"),
    path("descent/<int:pk>/edit/", descent_edit, name="descent_edit"),
]
