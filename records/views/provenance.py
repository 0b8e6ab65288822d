"""Where a thing has been and who has had it."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from records import access
from records.forms.provenance import ProvenanceForm
from records.models import Item, ProvenanceEvent
from records.views.writing import begin, correct

SENTENCE = "One event: bought, given, lent, shown, seen in a catalogue. A doubtful date is written as doubtful."


def _page_of(event: ProvenanceEvent) -> str:
    return f"{event.item.get_absolute_url()}#provenance"


def provenance_add(request: HttpRequest, number: str) -> HttpResponse:
    item = access.fetch(request, Item, number=number)
    return begin(
        request, ProvenanceForm, on={"item": item}, title=f"Provenance of {number}", sentence=SENTENCE,
        verb="Save the event", back_url=item.get_absolute_url(), then=_page_of,
    )  # fmt: skip


def provenance_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, ProvenanceForm, where={"pk": pk}, related=("item",), then=_page_of,
        title=lambda event: f"Correct the provenance of {event.item.number}",
    )  # fmt: skip


urls = [
    path("things/<str:number>/provenance/new/", provenance_add, name="provenance_add"),
    path("provenance/<int:pk>/edit/", provenance_edit, name="provenance_edit"),
]
