"""Where the area of a cathode comes from: its parts by shape, foil or scan."""

from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import FileResponse, Http404, HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.urls import path
from django.views.decorators.http import require_POST

from process.forms.areas import form_for
from process.models import AreaPart, Cathode
from process.services.areas import remove_part
from process.services.scan_files import path_of
from process.summaries.areas import sum_of
from records import access
from records.views.answering import answer_form

CATHODES = Cathode.objects.select_related("run", "mould__item", "core__item").prefetch_related("area_parts")
SENTENCE = "The shape is measured, the area follows; each part with its own ±."


def cathode_area(request: HttpRequest, pk: int) -> HttpResponse:
    cathode = access.fetch(request, CATHODES, pk=pk)
    context = {
        "cathode": cathode, "run": cathode.run, "sum": sum_of(cathode, cathode.area_parts.all()),
        "shapes": AreaPart.Shape.choices, "may_write": access.may(request.user, "write", AreaPart),
    }  # fmt: skip
    return render(request, "process/cathode_area.html", context)


def area_add(request: HttpRequest, pk: int, shape: str) -> HttpResponse:
    cathode = access.fetch(request, CATHODES, pk=pk)
    access.require(request, "write", AreaPart)
    if shape not in AreaPart.Shape.values:
        raise Http404("There is no such shape.")
    has_face = any(part.part == AreaPart.Part.FACE for part in cathode.area_parts.all())
    part = AreaPart(cathode=cathode, shape=shape, part=AreaPart.Part.FLANGE if has_face else AreaPart.Part.FACE)
    return _answer(request, part, f"Area: {part.get_shape_display()}")


def area_edit(request: HttpRequest, pk: int) -> HttpResponse:
    part = access.fetch(request, AreaPart.objects.select_related("cathode__run"), to="write", pk=pk)
    return _answer(request, part, f"Correct {part}")


def _answer(request: HttpRequest, part: AreaPart, title: str) -> HttpResponse:
    form = form_for(part.shape)(request.POST or None, request.FILES or None, instance=part)
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


def area_scan(request: HttpRequest, pk: int) -> HttpResponseBase:
    """The scan as it came."""
    part = access.fetch(request, AreaPart, pk=pk)
    kept = path_of(part)
    if kept is None:
        raise Http404("Of this scan only the digest was kept, or its file is not in the data folder.")
    name = part.scan_facts["name"]
    return FileResponse(kept.open("rb"), as_attachment=True, filename=name, content_type="application/octet-stream")


urls = [
    path("cathodes/<int:pk>/area/", cathode_area, name="cathode_area"),
    path("cathodes/<int:pk>/area/<str:shape>/", area_add, name="area_add"),
    path("areas/<int:pk>/edit/", area_edit, name="area_edit"),
    path("areas/<int:pk>/remove/", area_remove, name="area_remove"),
    path("areas/<int:pk>/scan/", area_scan, name="area_scan"),
]
