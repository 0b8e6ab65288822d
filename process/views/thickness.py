"""Points of a wall: measured one by one, and placed on a picture by touch, by keys or by two numbers."""

from typing import Any
from urllib.parse import urlencode

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.urls import path, reverse
from django.utils.safestring import SafeString, mark_safe

from process.forms.thickness import ThicknessForm, photos_for
from process.models import Run, Shell, ThicknessPoint
from process.summaries.runs import summarise
from process.summaries.thickness import ground_of, value_of
from records import access
from records.figures import Figure
from records.models import Photo
from records.pdf.spot_map import Spot, SpotMap, svg
from records.views.answering import answer_form

SENTENCE = "One point as the instrument showed it. A mean calculated from the mass is never entered here."
SHELLS = Shell.objects.select_related("item", "cathode__run")
AGAIN = ("photo", "outline", "method")
MOST = 6  # photographs offered as pictures; the others stand in the choice


def thickness_add(request: HttpRequest, number: str) -> HttpResponseBase:
    access.require(request, "write", ThicknessPoint)
    shell = access.fetch(request, SHELLS, item__number=number)
    photos = list(photos_for(shell)[:MOST])
    offered = {name: request.GET[name] for name in AGAIN if request.GET.get(name)}
    if not offered and photos:
        offered = {"photo": photos[0].pk}
    form = ThicknessForm(
        request.POST or None, instance=ThicknessPoint(shell=shell), user=request.user, means=means_of(shell),
        initial=offered,
    )  # fmt: skip
    return _answer(request, form, photos, "Measured thickness")


def thickness_edit(request: HttpRequest, pk: int) -> HttpResponseBase:
    rows = ThicknessPoint.objects.select_related("shell__item", "shell__cathode__run", "photo")
    point = access.fetch(request, rows, to="write", pk=pk)
    form = ThicknessForm(request.POST or None, instance=point, means=means_of(point.shell))
    return _answer(request, form, list(photos_for(point.shell)[:MOST]), f"Correct: {point.place}")


def _answer(request: HttpRequest, form: ThicknessForm, photos: list[Photo], title: str) -> HttpResponse:
    shell = form.instance.shell

    def then(point: ThicknessPoint) -> str:
        if "another" not in request.POST:
            return point.get_absolute_url()
        messages.success(request, f"{point.place}, {value_of(point)} mm, kept.")
        chosen = {"photo": point.photo_id or "", "outline": point.outline, "method": point.method}
        return f"{reverse('thickness_add', args=[shell.item.number])}?{urlencode(chosen)}"

    return answer_form(
        request, form, title=title, number=shell.item.number, verb="Keep the point", sentence=SENTENCE, then=then,
        back_url=f"{shell.get_absolute_url()}#wall", template="process/thickness_form.html",
        is_new=form.instance._state.adding, pictures=pictures_of(shell, photos),
    )  # fmt: skip


def means_of(shell: Shell) -> list[Figure]:
    """What was calculated from the mass of this shell and must not come back as measured."""
    summary = summarise(Run.objects.with_sheet(points=False).get(pk=shell.cathode.run_id))
    each = next((each for each in summary.cathodes if each.cathode.pk == shell.cathode_id), None)
    return [figure for figure in (each.thickness, each.face) if figure is not None] if each else []


def pictures_of(shell: Shell, photos: list[Photo]) -> list[dict[str, Any]]:
    """Each picture with a grid to read a place from, and the points that stand on it already."""
    points = [each for each in shell.thickness_points.all() if each.is_placed]
    found = []
    for photo in photos:
        on = [each for each in points if each.photo_id == photo.pk]
        found.append({"key": f"photo-{photo.pk}", "words": str(photo), "svg": _picker(photo, "", on)})
    for code, words in ThicknessPoint.Outline.choices:
        on = [each for each in points if each.outline == code]
        found.append({"key": f"outline-{code}", "words": f"Outline: {words}", "svg": _picker(None, code, on)})
    return found


def _picker(photo: Photo | None, outline: str, points: list[ThicknessPoint]) -> SafeString:
    spots = tuple(Spot(each.x_pct / 100, each.y_pct / 100, value_of(each), "") for each in points)
    name = f"photo-{photo.pk}" if photo else f"outline-{outline}"
    shown = SpotMap(str(photo or outline), "A grid of tenths.", spots, **ground_of(photo, outline))
    return mark_safe(svg(shown, f"pick-{name}", 480.0, grid=True))  # escaped by svg() itself


urls = [
    path("shells/<str:number>/thickness/new/", thickness_add, name="thickness_add"),
    path("thickness/<int:pk>/edit/", thickness_edit, name="thickness_edit"),
]
