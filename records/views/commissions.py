"""Commissions: the request, what it waits for, what came of it."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from records import access, clock
from records.commission_file import file_rows, open_matters, read_file, standing_of
from records.filters import by_words
from records.forms.commissions import CommissionForm
from records.models import Commission, Item
from records.views.answering import answer_form
from records.views.listing import export, page, wants_export
from records.views.offered_papers import kinds_for

COLUMNS = [("Number", "number"), ("Asked on", "requested_on"), ("By", "requester"), ("Purpose", "purpose"),
           ("Copies", "quantity_count"), ("Needed by", "needed_by"), ("Closed on", "closed_on")]  # fmt: skip


def commission_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", Commission)
    shown = request.GET.get("show", "open")
    rows = Commission.objects.select_related("requester", "purpose").prefetch_related("originals")
    if shown in {"open", "closed"}:
        rows = rows.filter(closed_on__isnull=shown == "open")
    words = request.GET.get("q", "").strip()
    rows = by_words(rows, words, "number", "requester__name", "purpose__label", "place_of_use")
    if wants_export(request):
        return export(rows, COLUMNS, "commissions")
    context = {"page": page(rows, request, key="-number"), "shown": shown, "q": words}
    return render(request, "records/commission_list.html", context)


def commission_add(request: HttpRequest) -> HttpResponse:
    access.require(request, "write", Commission)
    chosen = Item.objects.originals().filter(number__in=request.GET.getlist("original"))
    form = CommissionForm(request.POST or None, initial={"originals": chosen})
    return answer_form(
        request,
        form,
        title="Log a commission",
        verb="Log it",
        then=Commission.get_absolute_url,
        back_url=reverse("commission_list"),
        sentence="Who wants a copy of what, and what for: that decides weight, finish and care.",
    )


def commission(request: HttpRequest, number: str) -> HttpResponse:
    found = access.fetch(request, file_rows(), number=number)
    file = read_file(found)
    context = {
        "commission": found,
        "file": file,
        "standing": standing_of(file, clock.today()),
        "matters": [] if found.closed_on else open_matters(file),
        "steps": found.file_steps.select_related("person") if found.has_steps else [],
        "concessions": {c.pk: c for piece in file.pieces for c in piece.concessions.all()}.values(),
        "today": clock.today(),
        "papers": kinds_for(found) if access.may(request.user, "issue paper") else [],
    }
    return render(request, "records/commission.html", context)


def commission_edit(request: HttpRequest, number: str) -> HttpResponse:
    file = access.fetch(request, Commission, to="write", number=number)
    form = CommissionForm(request.POST or None, instance=file)
    return answer_form(request, form, title=f"Correct {file.number}", verb="Keep", back_url=file.get_absolute_url(),
                       then=Commission.get_absolute_url)  # fmt: skip


urls = [
    path("commissions/", commission_list, name="commission_list"),
    path("commissions/new/", commission_add, name="commission_add"),
    path("commissions/<str:number>/", commission, name="commission"),
    path("commissions/<str:number>/edit/", commission_edit, name="commission_edit"),
]
