"""Tags on sheets of labels: chosen, tried on plain paper, printed."""

from typing import Any

from django.conf import settings
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path

from records import access, clock
from records.forms.label_sheets import LabelSheetForm
from records.models import Item
from records.papers import tag_refusals
from records.pdf.refusal import CannotPrint

SENTENCE = "Tags for many things at once, on self-adhesive sheets or plain paper; kind of copy first on each."


def label_sheet(request: HttpRequest) -> HttpResponse:
    """Made anew each time it is asked for: tags are printed again when they are worn, and are no issued papers."""
    from records.pdf.sheets import SHEETS  # the paper kit is read when a paper is made

    access.require(request, "issue paper")
    typed = request.POST if request.method == "POST" else None
    form = LabelSheetForm(typed, sheets=SHEETS, initial={"numbers": request.GET.get("numbers", "")})
    if not form.is_valid():
        return _page(request, form)
    refused = [] if "trial" in request.POST else _refused(form)
    if refused and not form.cleaned_data["leave_out"]:
        return _page(request, form, refused=refused)
    try:
        return _pdf(_made(form, {item.pk for item, _ in refused}, trial="trial" in request.POST))
    except CannotPrint as reason:
        form.add_error("sheet", str(reason))
        return _page(request, form)


def _page(request: HttpRequest, form: LabelSheetForm, refused: list[Any] | None = None) -> HttpResponse:
    context = {"form": form, "sentence": SENTENCE, "refused": refused or []}
    return render(request, "records/label_sheet.html", context, status=422 if form.errors or refused else 200)


def _refused(form: LabelSheetForm) -> list[tuple[Item, str]]:
    """Those that get no tag yet, each with what is missing; a ticket for sale asks for an approved wording as well."""
    found = []
    for item in form.items:
        reasons = tag_refusals(item)
        if form.cleaned_data["kind"] == "sale" and not (hasattr(item, "label") and item.label.is_signed):
            reasons = [*reasons, f"The wording of {item.number} is not approved: nothing is sold without it."]
        if reasons:
            found.append((item, " ".join(reasons)))
    return found


def _made(form: LabelSheetForm, left_out: set[int], *, trial: bool) -> bytes:
    from records.reports.tag_sheets import make_tags, make_trial

    chosen = form.cleaned_data
    about: dict[str, Any] = {"sheet": chosen["sheet"], "right_mm": chosen["right"] or 0, "up_mm": chosen["up"] or 0}
    about |= {"issued_at": clock.now(), "museum": settings.MUSEUM_NAME}
    if trial:
        return make_trial(**about)
    items = [item for item in form.items if item.pk not in left_out]
    return make_tags(items, chosen["kind"], start=chosen["start"], marks=chosen["marks"], **about)


def _pdf(content: bytes) -> HttpResponse:
    answer = HttpResponse(content, content_type="application/pdf")
    answer["Content-Disposition"] = 'inline; filename="tags.pdf"'
    return answer


urls = [path("tags/", label_sheet, name="label_sheet")]
