"""The handling log of a copy: in sessions and hours."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from records import access
from records.forms.handovers import HandlingForm
from records.limits import limits_of
from records.models import HandlingSession, Item
from records.services.holding import log_handling
from records.views.answering import answer_form, wants_afterwards

SENTENCE = "Hands wear a copy out: how long, by how many, and what was seen afterwards."


def _page_of(row: HandlingSession) -> str:
    return f"{row.item.get_absolute_url()}#hands"


def _answer(request: HttpRequest, row: HandlingSession, title: str, initial: dict, act=None) -> HttpResponse:
    form = HandlingForm(request.POST or None, instance=row, initial=initial, limits=limits_of(row.item))
    return answer_form(
        request, form, title=title, number=row.item.number, sentence=SENTENCE, verb="Keep it",
        back_url=_page_of(row), then=_page_of, act=act,
    )  # fmt: skip


def handling_add(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", HandlingSession)
    copy = access.fetch(request, Item.objects.copies(), number=number)
    initial = {"supervised_by": access.party_of(request.user)}

    def act(form: HandlingForm) -> HandlingSession:
        return log_handling(session=form.save(commit=False), afterwards=wants_afterwards(request))

    return _answer(request, HandlingSession(item=copy), "Handled", initial, act)


def handling_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, HandlingSession.objects.select_related("item"), to="write", pk=pk)
    return _answer(request, row, "Correct the handling", {})


urls = [
    path("things/<str:number>/handling/new/", handling_add, name="handling_add"),
    path("handling/<int:pk>/edit/", handling_edit, name="handling_edit"),
]
