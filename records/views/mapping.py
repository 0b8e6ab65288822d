"""Findings on photographs: looked at closely, drawn, redrawn, rubbed out; and offered in open standards."""

from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import path, reverse
from django.views.decorators.http import require_POST

from records import access
from records.forms.mapping import FindingMarkForm
from records.mapping import Drawn, Map, could_show, maps_of
from records.models import Finding, FindingMark, Photo
from records.portraits import in_order
from records.services.mapping import draw, rub_out
from records.views.answering import answer_form
from records.views.condition import signed_already
from records.views.condition_page import REPORTS

FINDINGS = Finding.objects.select_related("term", "report__item").prefetch_related("marks__photo")
MARKS = FindingMark.objects.select_related("photo__item", "finding__term", "finding__report__item")
SHAPES = FindingMark.Shape
DRAW = "Show where finding {} lies: {}, {}."


def condition_map(request: HttpRequest, number: str, pk: int) -> HttpResponse:
    """One photograph, as close as one likes, with what this report found on it."""
    report = access.fetch(request, REPORTS, number=number)
    photo = access.fetch(request, Photo.objects.filter(item=report.item), pk=pk)
    shown = next(map for map in maps_of(report.findings.all(), [photo]) if map.photo == photo)
    may_change = access.may(request.user, "write", FindingMark) and not report.is_signed
    context = {"report": report, "map": shown, "may_change": may_change, "shapes": SHAPES.choices,
               "findings": report.findings.all()}  # fmt: skip
    return render(request, "records/condition_map.html", context)


def finding_place(request: HttpRequest, pk: int) -> HttpResponse:
    """Which photograph, and as what."""
    finding = access.fetch(request, FINDINGS, to="write", pk=pk)
    if finding.report.is_signed:
        return signed_already(request, finding.report)
    photos = in_order(Photo.objects.filter(item=finding.report.item))
    mine = [photo for photo in photos if could_show(photo, finding.report.examined_on)]
    mine.sort(key=lambda photo: photo.pk != finding.photo_id)
    context = {"finding": finding, "report": finding.report, "photos": mine, "shapes": SHAPES.choices}
    return render(request, "records/finding_place.html", context)


def finding_draw(request: HttpRequest, pk: int, photo_pk: int, shape: str) -> HttpResponse:
    finding = access.fetch(request, FINDINGS, to="write", pk=pk)
    photo = access.fetch(request, Photo.objects.filter(item=finding.report.item), pk=photo_pk)
    if shape not in SHAPES.values:
        raise Http404("A finding is drawn as a point, a rectangle, an outline or a line.")
    return _drawing(request, FindingMark(finding=finding, photo=photo, shape=shape))


def finding_redraw(request: HttpRequest, pk: int) -> HttpResponse:
    return _drawing(request, access.fetch(request, MARKS, to="write", pk=pk))


def _drawing(request: HttpRequest, mark: FindingMark) -> HttpResponse:
    finding, is_new = mark.finding, mark._state.adding
    if finding.report.is_signed and request.method != "POST":
        return signed_already(request, finding.report)
    others = [Drawn(m, m.finding) for m in MARKS.filter(finding__report=finding.report, photo=mark.photo) if m != mark]

    def act(form: FindingMarkForm) -> FindingMark:
        points = form.cleaned_data["points"]
        return draw(finding=finding, photo=mark.photo, shape=mark.shape, points=points, mark=None if is_new else mark)

    return answer_form(
        request, FindingMarkForm(request.POST or None, instance=mark), act=act, verb="Keep the drawing",
        title=f"{mark.get_shape_display().capitalize()} of finding {finding.position_count}", then=_on_the_map,
        sentence=DRAW.format(finding.position_count, finding.term, finding.location), photo=mark.photo,
        alt=mark.photo.view_words, kind=mark.shape, shapes=Map(mark.photo, others).placed, mark=mark,
        template="records/finding_draw.html", report=finding.report, is_new=is_new,
        back_url=finding.report.get_absolute_url(),
    )  # fmt: skip


def _on_the_map(mark: FindingMark) -> str:
    return reverse("condition_map", args=[mark.finding.report.number, mark.photo_id])


@require_POST
def finding_mark_delete(request: HttpRequest, pk: int) -> HttpResponse:
    mark = access.fetch(request, MARKS, to="write", pk=pk)
    back = _on_the_map(mark)
    try:
        rub_out(mark=mark)
        messages.success(request, "Rubbed out; the history keeps it.")
    except ValidationError as error:
        messages.error(request, " ".join(error.messages))
    return redirect(back)


urls = [
    path("condition/<str:number>/map/<int:pk>/", condition_map, name="condition_map"),
    path("findings/<int:pk>/place/", finding_place, name="finding_place"),
    path("findings/<int:pk>/draw/<int:photo_pk>/<str:shape>/", finding_draw, name="finding_draw"),
    path("findings/drawings/<int:pk>/edit/", finding_redraw, name="finding_redraw"),
    path("findings/drawings/<int:pk>/delete/", finding_mark_delete, name="finding_mark_delete"),
]
