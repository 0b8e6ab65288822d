"""Tags on sheets of labels: chosen, tried on plain paper, printed."""

from typing import Any

from django.conf import settings
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import path

from records import access, clock
from records.forms.label_sheets import LabelSheetForm
from records.models import Item
from records.papers import tag_refusals
from records.pdf.refusal import CannotPrint
from records.services import tag_jobs

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
    left_out = {item.pk for item, _ in refused}
    items = [item for item in form.items if item.pk not in left_out]
    if len(items) > tag_jobs.AT_ONCE:
        return redirect(tag_jobs.begin(items=items, about=_about(form), user=request.user))
    try:
        return _pdf(_made(form, items, trial="trial" in request.POST))
    except CannotPrint as reason:
        form.add_error("sheet", str(reason))
        return _page(request, form)


def label_sheet_file(request: HttpRequest, token: str) -> HttpResponse:
    """What the worker made; after a day it has to be made again."""
    access.require(request, "issue paper")
    file = tag_jobs.file_of(token)
    if not file.is_file():
        raise Http404("This sheet was made more than a day ago: print it again.")
    return _pdf(file.read_bytes())


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


def _about(form: LabelSheetForm) -> dict[str, Any]:
    chosen = form.cleaned_data
    return {
        "kind": chosen["kind"], "sheet": chosen["sheet"], "start": chosen["start"], "marks": chosen["marks"],
        "right_mm": chosen["right"] or 0, "up_mm": chosen["up"] or 0,
    }  # fmt: skip


def _made(form: LabelSheetForm, items: list[Item], *, trial: bool) -> bytes:
    from records.reports.tag_sheets import make_tags, make_trial

    about = _about(form) | {"issued_at": clock.now(), "museum": settings.MUSEUM_NAME}
    if not trial:
        return make_tags(items, about.pop("kind"), **about)
    return make_trial(**{name: about[name] for name in ("sheet", "right_mm", "up_mm", "issued_at", "museum")})


def _pdf(content: bytes) -> HttpResponse:
    answer = HttpResponse(content, content_type="application/pdf")
    answer["Content-Disposition"] = 'inline; filename="tags.pdf"'
    return answer


urls = [
    path("tags/", label_sheet, name="label_sheet"),
    path("tags/<uuid:token>/", label_sheet_file, name="label_sheet_file"),
]
