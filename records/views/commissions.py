"""Commissions: the request, what it waits for, what came of it."""

from django.contrib import messages
from django.db import transaction
from django.db.models import Q, QuerySet
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import path, reverse
from django.views.decorators.http import require_POST

from records import access, clock
from records.forms.commissions import CommissionForm
from records.gate_overview import gates_of, pieces_of
from records.models import Commission, Duty, Item
from records.views.answering import answer_form
from records.views.listing import export, page, wants_export

COLUMNS = [("Number", "number"), ("Asked on", "requested_on"), ("By", "requester"), ("Purpose", "purpose"),
           ("Copies", "quantity_count"), ("Needed by", "needed_by"), ("Closed on", "closed_on")]  # fmt: skip


def commission_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", Commission)
    shown = request.GET.get("show", "open")
    rows = Commission.objects.select_related("requester", "purpose").prefetch_related("originals")
    if shown in {"open", "closed"}:
        rows = rows.filter(closed_on__isnull=shown == "open")
    if wants_export(request):
        return export(rows, COLUMNS, "commissions")
    context = {"page": page(rows, request, key="-number"), "shown": shown}
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
    rows = Commission.objects.select_related("requester", "purpose")
    file = access.fetch(request, rows, number=number)
    pieces = pieces_of(file)
    context = {
        "commission": file,
        "originals": [piece for piece in pieces if not piece.was_made],
        "copies": [piece for piece in pieces if piece.was_made],
        "consents": file.consents.select_related("owner", "given_by"),
        "specifications": file.specifications.select_related("item"),
        "concessions": {c.pk: c for piece in pieces for c in piece.concessions.all()}.values(),
        "duties": _duties_of(file),
        "gates": gates_of(pieces, clock.today()),
        "today": clock.today(),
    }
    return render(request, "records/commission.html", context)


def _duties_of(file: Commission) -> QuerySet[Duty]:
    """Its own, and those that its consents lay down for its originals."""
    conditions = Q(consent__in=file.consents.all(), commission=None)
    return Duty.objects.open().filter(Q(commission=file) | conditions).select_related("item").distinct()


def commission_edit(request: HttpRequest, number: str) -> HttpResponse:
    file = access.fetch(request, Commission, to="write", number=number)
    form = CommissionForm(request.POST or None, instance=file)
    return answer_form(request, form, title=file.number, verb="Keep", back_url=file.get_absolute_url(),
                       then=Commission.get_absolute_url)  # fmt: skip


@require_POST
def commission_close(request: HttpRequest, number: str) -> HttpResponse:
    """A file is closed by the registrar; duties that are still open keep it open."""
    file = access.fetch(request, Commission, to="close commission", number=number)
    if file.duties.open().exists():
        messages.error(request, "Duties of this commission are still open: do them, or write them off as done, first.")
        return redirect(file)
    with transaction.atomic():
        held = Commission.objects.select_for_update(of=("self",)).get(pk=file.pk)  # others may have corrected it
        held.closed_on = clock.today()
        held.save()
    return redirect(file)


urls = [
    path("commissions/", commission_list, name="commission_list"),
    path("commissions/new/", commission_add, name="commission_add"),
    path("commissions/<str:number>/", commission, name="commission"),
    path("commissions/<str:number>/edit/", commission_edit, name="commission_edit"),
    path("commissions/<str:number>/close/", commission_close, name="commission_close"),
]
