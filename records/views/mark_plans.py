"""Before the mould: which mark will do. On the copy: what became of the marks of its original."""

from dataclasses import replace
from typing import Any

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from records import access, marking
from records.forms.mark_rules import WORDED, SuppressedMarkForm, TrialForm
from records.judging import piece_facts
from records.marking import PieceFacts
from records.models import Item, SuppressedMark
from records.original_marks import foreseen_marks
from records.own_rules import all_rules
from records.views.answering import answer_form

DEPTH_MM = 0.3


def mark_plan(request: HttpRequest, number: str) -> HttpResponse:
    """A trial on a piece of this size; nothing of it is kept."""
    item = access.fetch(request, Item, number=number)
    form = TrialForm(request.GET if "text" in request.GET else None)
    typed: dict[str, Any] = form.cleaned_data if form.is_valid() else {}
    piece, rules = _as_copied(piece_facts(item), item), all_rules()
    text = typed.get("text") or form.fields["text"].initial
    judged = marking.judge(marking.MarkFacts(text), piece, rules)
    context = {
        "item": item, "form": form, "piece": piece, "text": text, "disclaimer": marking.ADVICE,
        "trials": marking.trials(text, piece, rules), "ways": _ways(typed, piece),
        "placed": [verdict for verdict in judged if verdict.rule.check in WORDED],
        "asked_of_piece": [verdict for verdict in judged if verdict.rule.check in marking.ABOUT_THE_PIECE],
    }  # fmt: skip
    return render(request, "records/mark_plan.html", context, status=422 if form.errors else 200)


def _as_copied(piece: PieceFacts, item: Item) -> PieceFacts:
    """A copy of an original will be copper, which conducts about 100 % IACS."""
    return piece if item.is_copy else replace(piece, metal="copper", conductivity_pct=100.0)


def _ways(typed: dict[str, Any], piece: PieceFacts) -> list[tuple[str, str, str]]:
    wall_mm = typed.get("wall_mm")
    depth_mm = min(DEPTH_MM, piece.thickness_mm / 2) if piece.thickness_mm else DEPTH_MM
    return list(marking.ways(depth_mm, wall_mm, bool(typed.get("backed"))))


def original_marks(request: HttpRequest, number: str) -> HttpResponse:
    copy = access.fetch(request, Item.objects.copies(), number=number)
    marks = foreseen_marks(copy)
    told = {row.mark_id: row for row in copy.suppressed_marks.select_related("mark", "done_by", "photo")}
    rows = [(mark, told.get(mark.pk)) for mark in marks]
    return render(request, "records/original_marks.html", {"item": copy, "rows": rows})


def suppressed_add(request: HttpRequest, number: str) -> HttpResponse:
    copy = access.fetch(request, Item.objects.copies(), number=number)
    access.require(request, "write", SuppressedMark)
    initial = {"mark": request.GET.get("mark"), "done_by": access.party_of(request.user)}
    return _answer(request, SuppressedMark(copy=copy), initial)


def suppressed_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, SuppressedMark.objects.select_related("copy"), to="write", pk=pk)
    return _answer(request, row, {})


def _answer(request: HttpRequest, row: SuppressedMark, initial: dict[str, Any]) -> HttpResponse:
    back = reverse("original_marks", args=[row.copy.number])
    form = SuppressedMarkForm(request.POST or None, instance=row, initial=initial, marks=foreseen_marks(row.copy))
    return answer_form(
        request, form, title=f"A mark of the original, on {row.copy.number}", verb="Keep", back_url=back,
        sentence="A copy that carries on a hallmark or a maker’s mark can be taken for the original.",
        then=lambda _: back,
    )  # fmt: skip


urls = [
    path("things/<str:number>/mark-plan/", mark_plan, name="mark_plan"),
    path("things/<str:number>/marks/original/", original_marks, name="original_marks"),
    path("things/<str:number>/marks/original/new/", suppressed_add, name="suppressed_add"),
    path("marks/original/<int:pk>/edit/", suppressed_edit, name="suppressed_edit"),
]
