"""Where the area of a cathode comes from: its parts by shape, foil or scan."""

from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import path
from django.views.decorators.http import require_POST

from process.forms.areas import AreaForm
from process.forms.scans import ScanReadForm
from process.models import AreaPart, Cathode
from process.services.areas import remove_part
from process.services.scan_files import waiting_at
from process.summaries.areas import sum_of
from process.views.scans import send_scan
from records import access
from records.views.answering import answer_form

CATHODES = Cathode.objects.select_related("run", "mould__item", "core__item").prefetch_related("area_parts")
SENTENCE = "The shape is measured, the area follows; each part with its own ±."


def cathode_area(request: HttpRequest, pk: int) -> HttpResponse:
    cathode = access.fetch(request, CATHODES, pk=pk)
    context = {
        "cathode": cathode, "run": cathode.run, "sum": sum_of(cathode, cathode.area_parts.all()),
        "shapes": AreaPart.Shape.choices, "may_write": access.may(request.user, "write", AreaPart),
        "waiting": waiting_at(cathode),
    }  # fmt: skip
    return render(request, "process/cathode_area.html", context)


def area_add(request: HttpRequest, pk: int, shape: str) -> HttpResponse:
    cathode = access.fetch(request, CATHODES, pk=pk)
    access.require(request, "write", AreaPart)
    if shape not in AreaPart.Shape.values:
        raise Http404("There is no such shape.")
    has_face = any(part.part == AreaPart.Part.FACE for part in cathode.area_parts.all())
    part = AreaPart(cathode=cathode, shape=shape, part=AreaPart.Part.FLANGE if has_face else AreaPart.Part.FACE)
    if shape == AreaPart.Shape.SCAN:
        return send_scan(request, part)
    return _answer(request, part, f"Area: {part.get_shape_display()}")


def area_edit(request: HttpRequest, pk: int) -> HttpResponse:
    part = access.fetch(request, AreaPart.objects.select_related("cathode__run"), to="write", pk=pk)
    return _answer(request, part, f"Correct {part}")


def _answer(request: HttpRequest, part: AreaPart, title: str) -> HttpResponse:
    kind = ScanReadForm if part.shape == AreaPart.Shape.SCAN else AreaForm
    form = kind(request.POST or None, instance=part)
    return answer_form(
        request, form, title=title, number=part.cathode.run.number, sentence=SENTENCE, verb="Keep this part",
        back_url=part.get_absolute_url(), then=AreaPart.get_absolute_url,
    )  # fmt: skip


@require_POST
def area_remove(request: HttpRequest, pk: int) -> HttpResponse:
    part = access.fetch(request, AreaPart.objects.select_related("cathode__run"), to="write", pk=pk)
    try:
        remove_part(part=part)
    except ValidationError as error:
        messages.error(request, " ".join(error.messages))
    return redirect("cathode_area", part.cathode_id)


urls = [
    path("cathodes/<int:pk>/area/", cathode_area, name="cathode_area"),
    path("cathodes/<int:pk>/area/<str:shape>/", area_add, name="area_add"),
    path("areas/<int:pk>/edit/", area_edit, name="area_edit"),
    path("areas/<int:pk>/remove/", area_remove, name="area_remove"),
]
