"""Inspection and acceptance of a copy, and how its mark stands against the recorded rules."""

from django.http import HttpRequest
from django.urls import reverse

from process.models import Inspection, MakingUp
from process.panels.copies import making_of, summary_of
from process.summaries.copy_states import state_from
from records import access, marking
from records.extensions import Panel, item_panels
from records.judging import piece_facts, verdicts_of
from records.marking import PieceFacts
from records.models import Item, Mark


def acceptance_panel(request: HttpRequest, item: Item) -> Panel | None:
    if not item.is_copy:
        return None
    if not item.made_here:
        context = {"item": item, "historic": True}
        return Panel("Historic copy", "process/_copy_acceptance.html", context, order=55, anchor="acceptance")
    making = making_of(item)
    inspections = making.inspected if making else []
    marks = [mark for mark in item.marks.all() if mark.purpose == Mark.Purpose.COPY]
    mark = next((mark for mark in marks if mark.is_photographed_copy_mark), next(iter(marks), None))
    signed = next((each for each in inspections if each.is_signed), None)
    state = state_from(True, bool(mark and mark.is_photographed_copy_mark), signed.decision if signed else None)
    may_inspect = bool(making) and access.may(request.user, "write", Inspection)
    context = {
        "item": item, "inspections": inspections, "mark": mark, "state": state, "disclaimer": marking.ADVICE,
        "verdicts": verdicts_of(mark, _piece(item, making)) if mark else [],
        "may_inspect": may_inspect,
        "may_accept": access.may(request.user, "accept copy"),
    }  # fmt: skip
    step = _step(item, inspections, context["may_accept"]) if may_inspect and signed is None else None
    return Panel("Inspection and acceptance", "process/_copy_acceptance.html", context, 55, "acceptance", step)


def _step(item: Item, inspections: list[Inspection], may_accept: bool) -> tuple[str, str]:
    """Inspect first; what is inspected waits for its signature."""
    if inspections and may_accept:
        return "Sign its inspection", reverse("inspection_sign", args=[inspections[0].pk])
    return "Inspect it", reverse("inspection_add", args=[item.number])


def _piece(item: Item, making: MakingUp | None) -> PieceFacts:
    """Sizes of the copy, and of what it repeats where it was not measured yet."""
    if making is None:
        return piece_facts(item)
    summary = summary_of(item, making)
    return piece_facts(item, [summary.model] if summary.model else [])


item_panels.append(acceptance_panel)
