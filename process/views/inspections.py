"""Inspections of copies made here: written, then signed."""

from typing import Any

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect
from django.urls import path, reverse

from process.forms.inspections import InspectionForm, SignForm
from process.models import FinishStep, Inspection
from process.services.copies import ACCEPTING, accept
from process.summaries.acceptance import points_of
from process.summaries.copies import CopySummary, summarise
from records import access, clock
from records.gates import Subject, checks
from records.models import Gate, Item
from records.services.signing import refuse_unread
from records.views.answering import answer_form

SENTENCE = (
    "Weighed, measured where it was measured before, looked at under the lens: then a decision with a name to it."
)
HISTORIC = "{} was not made here: a historic copy is flagged on its page and its papers, and not accepted by us."
INSPECTIONS = Inspection.objects.select_related(
    "copy__making_up__core", "copy__making_up__fill", "inspector", "concession"
)


def _summary(copy: Item) -> CopySummary:
    finishes = list(FinishStep.objects.filter(copy=copy).select_related("finish"))
    return summarise(copy.making_up, finishes, None)


def _page_of(copy: Item) -> str:
    return f"{copy.get_absolute_url()}#acceptance"


def inspection_add(request: HttpRequest, number: str) -> HttpResponseBase:
    access.require(request, "write", Inspection)
    copies = Item.objects.select_related("making_up__core", "making_up__fill")
    copy = access.fetch(request, copies, number=number)
    if not copy.made_here or not hasattr(copy, "making_up"):
        messages.warning(request, HISTORIC.format(number))
        return redirect(copy)
    summary = _summary(copy)
    initial = {"inspector": access.party_of(request.user), **_thinnest(summary)}
    form = InspectionForm(request.POST or None, instance=Inspection(copy=copy), initial=initial, summary=summary)
    return _answer(request, form, f"Inspect {number}")


def _thinnest(summary: CopySummary) -> dict[str, Any]:
    """The least of the points measured on the shells: not to be typed twice."""
    found = [(part.least.value, part) for part in summary.parts if part.least]
    if not found:
        return {}
    value, part = min(found, key=lambda pair: pair[0])
    point = min(part.shell.thickness_points.all(), key=lambda each: each.thickness_mm)
    return {"thickness_min_mm": value, "thickness_method": point.method}


def inspection_edit(request: HttpRequest, pk: int) -> HttpResponseBase:
    inspection = access.fetch(request, INSPECTIONS, to="write", pk=pk)
    if inspection.is_signed:
        messages.warning(
            request, "This inspection is signed and stays as it is: write a new one if the piece was looked at again."
        )
        return redirect(_page_of(inspection.copy))
    form = InspectionForm(request.POST or None, instance=inspection, summary=_summary(inspection.copy))
    return _answer(request, form, f"Inspection of {inspection.copy.number}")


def _answer(request: HttpRequest, form: InspectionForm, title: str) -> HttpResponse:
    copy = form.instance.copy
    return answer_form(
        request, form, title=title, number=copy.number, sentence=SENTENCE, verb="Keep, then sign",
        back_url=_page_of(copy),
        then=lambda row: reverse("inspection_sign", args=[row.pk]), template="process/inspection_form.html",
        summary=form.summary,
    )  # fmt: skip


def inspection_sign(request: HttpRequest, pk: int) -> HttpResponseBase:
    inspection = access.fetch(request, INSPECTIONS, to="accept copy", pk=pk)
    copy = inspection.copy
    if inspection.is_signed:
        return redirect(_page_of(copy))
    party, role = access.signer(request, "accept copy")
    form = SignForm(request.POST if request.method == "POST" else None, inspection=inspection)

    def act(form: SignForm) -> Item:
        refuse_unread(inspection, form.cleaned_data["version"])
        place = form.cleaned_data["place"]
        accept(inspection=inspection, party=party, role=role, status=form.held_as(), place=place)
        return copy

    accepting = inspection.decision in ACCEPTING
    mark = checks(Gate.MARK, Subject(copy, copy.number, (copy,)), clock.today()) if accepting else []
    return answer_form(
        request, form, title=f"Sign the inspection of {copy.number}", act=act, then=_page_of,
        template="process/inspection_sign.html",
        inspection=inspection, item=copy, mark_checks=mark, points=points_of(inspection),
        signer=party, role=role, gate_final=True,
        back_url=_page_of(copy), verb="Accept and sign" if accepting else "Sign",
    )  # fmt: skip


urls = [
    path("copies/<str:number>/inspections/new/", inspection_add, name="inspection_add"),
    path("inspections/<int:pk>/edit/", inspection_edit, name="inspection_edit"),
    path("inspections/<int:pk>/sign/", inspection_sign, name="inspection_sign"),
]
