"""Where a thing has been and who has had it."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from records import access
from records.forms.provenance import ProvenanceForm
from records.models import Item, ProvenanceEvent
from records.views.answering import answer_form

SENTENCE = "One event: bought, given, lent, shown, seen in a catalogue. A doubtful date is written as doubtful."


def _page_of(event: ProvenanceEvent) -> str:
    return f"{event.item.get_absolute_url()}#provenance"


def provenance_add(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", ProvenanceEvent)
    item = access.fetch(request, Item, number=number)
    form = ProvenanceForm(request.POST or None, instance=ProvenanceEvent(item=item))
    return answer_form(
        request, form, title=f"Provenance of {number}", sentence=SENTENCE, verb="Save the event",
        back_url=item.get_absolute_url(), then=_page_of,
    )  # fmt: skip


def provenance_edit(request: HttpRequest, pk: int) -> HttpResponse:
    event = access.fetch(request, ProvenanceEvent.objects.select_related("item"), to="write", pk=pk)
    form = ProvenanceForm(request.POST or None, instance=event)
    return answer_form(
        request, form, title=f"Correct the provenance of {event.item.number}", verb="Save",
        back_url=_page_of(event), then=_page_of,
    )  # fmt: skip


urls = [
    path("things/<str:number>/provenance/new/", provenance_add, name="provenance_add"),
    path("provenance/<int:pk>/edit/", provenance_edit, name="provenance_edit"),
]
