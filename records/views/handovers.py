"""Copies in other hands: the list, one handover as a file, and its three moments."""

from typing import Any

from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import render
from django.urls import path

from records import access, clock
from records.forms.handovers import AgreementForm, CallOffForm, HandingForm, ReturnForm
from records.handing import state_of
from records.identity import identity_of
from records.limits import concessions_of, limits_of
from records.models import Document, Handover, Item
from records.numbers import SERIES, next_number
from records.services import handovers
from records.views.answering import answer_form, wants_afterwards
from records.views.listing import export, page, wants_export
from records.views.offered_papers import kinds_for

ROWS = Handover.objects.select_related(
    "item__label", "item__owner", "party", "serves", "commission", "handed_by", "taken_back_by"
)
AGREE = "Nothing leaves yet: this says who gets the copy, for what, until when, and as what it is described."
HAND = "Weighed and looked at now, so that it can be compared when it comes back."
BACK = "Weighed and looked at as on the way out, before anything else is done to it."
COLUMNS = [
    ("number", "number"), ("copy", "item__number"), ("kind", "get_kind_display"), ("goes to", "party__name"),
    ("purpose", "purpose"), ("serves as", "serves"), ("agreed on", "agreed_on"), ("out on", "out_on"),
    ("due back on", "due_on"),
    ("back on", "back_on"), ("mass out, g", "mass_out_g"), ("mass back, g", "mass_back_g"),
    ("received by", "receiver"), ("acknowledged as a copy on", "acknowledged_on"),
    ("stands", lambda row: state_of(row)[1]),
]  # fmt: skip


def handover_list(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "view", Handover)
    shown = request.GET.get("show", "")
    rows = {"all": ROWS, "agreed": ROWS.agreed()}.get(shown, ROWS.out())
    if wants_export(request):
        return export(rows, COLUMNS, "handovers")
    found = page(rows, request, key="-number")
    lines = [(row, *state_of(row)) for row in found.rows]
    return render(request, "records/handover_list.html", {"page": found, "lines": lines, "shown": shown})


def handover(request: HttpRequest, number: str) -> HttpResponse:
    row = access.fetch(request, ROWS, number=number)
    state, word = state_of(row)
    context = {
        "row": row, "state": state, "word": word, "concessions": concessions_of(row.item),
        "documents": Document.objects.filter(number=row.number).select_related("issued_by", "item"),
        "may_write": access.may(request.user, "write", Handover),
        "papers": kinds_for(row) if access.may(request.user, "issue paper") and not row.called_off_on else [],
    }  # fmt: skip
    return render(request, "records/handover.html", context)


def handover_add(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", Handover)
    copy = access.fetch(request, Item.objects.copies().select_related("label"), number=number)
    initial = {
        "number": next_number(Handover, SERIES["handover"]), "kind": request.GET.get("kind", ""),
        "agreed_on": clock.today(), "described_as": identity_of(copy).heading,
    }  # fmt: skip
    form = AgreementForm(request.POST or None, instance=Handover(item=copy), initial=initial)
    return answer_form(
        request, form, title=f"Hand {number} over", number=number, sentence=AGREE, verb="Keep what is agreed",
        back_url=copy.get_absolute_url(), act=_agree, then=Handover.get_absolute_url,
    )  # fmt: skip


def _agree(form: AgreementForm) -> Handover:
    return handovers.agree(handover=form.save(commit=False))


def _answer(request: HttpRequest, form: Any, row: Handover, **answer: Any) -> HttpResponse:
    return answer_form(
        request, form, number=row.number, back_url=row.get_absolute_url(), then=lambda _: row.get_absolute_url(),
        **answer,
    )  # fmt: skip


def handover_edit(request: HttpRequest, number: str) -> HttpResponse:
    row = access.fetch(request, ROWS, to="write", number=number)
    form = AgreementForm(request.POST or None, instance=row)
    return _answer(request, form, row, title="Correct what was agreed", verb="Save", act=_correct)


def _correct(form: AgreementForm) -> Handover:
    row = form.save(commit=False)
    if row.out_on:
        row.save()
        return row
    return handovers.agree(handover=row)


def handover_out(request: HttpRequest, number: str) -> HttpResponse:
    row = access.fetch(request, ROWS.filter(called_off_on=None), to="write", number=number)
    went = row.out_on is not None
    initial = {} if went else {"handed_by": access.party_of(request.user)}
    form = HandingForm(request.POST or None, instance=row, initial=initial, limits=limits_of(row.item))

    def act(form: HandingForm) -> Handover:
        given = form.save(commit=False)
        if went:
            given.save()
            return given
        return handovers.hand_over(handover=given, afterwards=wants_afterwards(request))

    return _answer(
        request, form, row, title=f"Hand {row.item.number} to {row.party}", sentence=HAND, verb="It is handed over",
        act=act,
    )  # fmt: skip


def handover_back(request: HttpRequest, number: str) -> HttpResponse:
    rows = ROWS.filter(out_on__isnull=False, kind__in=Handover.RETURNING)
    row = access.fetch(request, rows, to="write", number=number)
    initial = {} if row.back_on else {"taken_back_by": access.party_of(request.user)}
    form = ReturnForm(request.POST or None, instance=row, initial=initial)
    return _answer(
        request, form, row, title=f"Take {row.item.number} back", sentence=BACK, verb="It is back",
        act=lambda form: handovers.take_back(handover=form.save(commit=False), place=form.cleaned_data["place"]),
    )  # fmt: skip


def handover_call_off(request: HttpRequest, number: str) -> HttpResponse:
    row = access.fetch(request, ROWS.filter(called_off_on=None), to="write", number=number)
    return _answer(
        request, CallOffForm(request.POST or None), row, title="It does not happen", verb="Call it off",
        sentence="What was agreed stays on record, with the reason.",
        act=lambda form: handovers.call_off(handover=row, because=form.cleaned_data["because"]),
    )  # fmt: skip


urls = [
    path("handovers/", handover_list, name="handover_list"),
    path("things/<str:number>/handovers/new/", handover_add, name="handover_add"),
    path("handovers/<str:number>/", handover, name="handover"),
    path("handovers/<str:number>/edit/", handover_edit, name="handover_edit"),
    path("handovers/<str:number>/out/", handover_out, name="handover_out"),
    path("handovers/<str:number>/back/", handover_back, name="handover_back"),
    path("handovers/<str:number>/call-off/", handover_call_off, name="handover_call_off"),
]
