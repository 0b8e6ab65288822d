"""People, institutions and workshops."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from records import access
from records.filters import by_words
from records.forms.parties import PartyForm
from records.models import Party
from records.views.listing import PAGE_SIZE, export, page, wants_export
from records.views.writing import begin, correct

SENTENCE = "A person, institution or workshop that this register names."
COLUMNS = [("Name", "name"), ("Kind", "get_kind_display"), ("What they do", "function"), ("E-mail", "email")]


def party_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", Party)
    rows = Party.objects.all()
    if words := request.GET.get("q", "").strip():
        rows = by_words(rows, words, "name", "function")
    if wants_export(request):
        return export(rows, COLUMNS, "parties")
    return render(request, "records/party_list.html", {"page": page(rows, request, key="name"), "q": words})


def party_add(request: HttpRequest) -> HttpResponse:
    return begin(
        request, PartyForm, title="New party", sentence=SENTENCE, verb="Keep", back_url=reverse("party_list"),
        offer=lambda: {"name": request.GET.get("name", "")}, then=Party.get_absolute_url,
    )  # fmt: skip


def party(request: HttpRequest, pk: int) -> HttpResponse:
    person = access.fetch(request, Party.objects.select_related("user"), pk=pk)
    owned, commissions = person.owned.all()[: PAGE_SIZE + 1], person.commissions.all()[: PAGE_SIZE + 1]
    context = {
        "party": person,
        "owned": owned[:PAGE_SIZE],
        "more_owned": len(owned) > PAGE_SIZE,
        "commissions": commissions[:PAGE_SIZE],
        "more_commissions": len(commissions) > PAGE_SIZE,
        "consents": person.consents.prefetch_related("items")[:50],
    }
    return render(request, "records/party.html", context)


def party_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(request, PartyForm, where={"pk": pk}, title=str, verb="Keep", then=Party.get_absolute_url)


urls = [
    path("parties/", party_list, name="party_list"),
    path("parties/new/", party_add, name="party_add"),
    path("parties/<int:pk>/", party, name="party"),
    path("parties/<int:pk>/edit/", party_edit, name="party_edit"),
]
