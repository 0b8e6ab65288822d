"""The scale of a photograph, and distances and areas measured on it."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import path

from records import access, extensions
from records.forms.photo_measures import MeasureForm, ScaleForm
from records.models import Party, Photo, PhotoMeasure, PhotoScale
from records.photo_measures import scale_of, scale_words, shown
from records.views.answering import answer_form
from records.views.photo_page import alt_of

PHOTOS = Photo.objects.select_related("item", "scale")
SET_SCALE = (
    "Set the two ends of a known length, such as a bar that was laid beside the piece. It holds where the bar lay "
    "level with what is measured, seen squarely."
)
KINDS = {
    PhotoMeasure.Kind.DISTANCE: ("Measure a distance", "Set the two ends, or more points along a bent line."),
    PhotoMeasure.Kind.AREA: ("Measure an area", "Set points round the edge; the last is joined to the first."),
}


def _me(request: HttpRequest) -> Party | None:
    return Party.objects.filter(user=request.user).first()


def photo_scale(request: HttpRequest, pk: int) -> HttpResponse:
    photo = access.fetch(request, PHOTOS, to="write", pk=pk)
    scale = scale_of(photo) or PhotoScale(photo=photo, placed_by=_me(request))
    return answer_form(
        request, ScaleForm(request.POST or None, instance=scale), title="The scale of the photograph",
        sentence=SET_SCALE, verb="Keep the scale", then=lambda scale: f"{photo.get_absolute_url()}#measures",
        template="records/photo_draw.html", photo=photo, alt=alt_of(photo), shapes=[], kind="scale",
        back_url=photo.get_absolute_url(),
    )  # fmt: skip


def photo_measure_add(request: HttpRequest, pk: int, kind: str) -> HttpResponse:
    photo = access.fetch(request, PHOTOS, to="write", pk=pk)
    scale = scale_of(photo)
    if scale is None or kind not in KINDS:
        return redirect("photo_scale", pk=pk)
    title, sentence = KINDS[PhotoMeasure.Kind(kind)]
    form = MeasureForm(
        request.POST or None, instance=PhotoMeasure(photo=photo, kind=kind), initial={"measured_by": _me(request)}
    )
    return answer_form(
        request, form, title=title, sentence=f"{sentence} {scale_words(scale)}", verb="Keep it",
        then=lambda measure: f"{photo.get_absolute_url()}#measures", template="records/photo_draw.html", photo=photo,
        alt=alt_of(photo), shapes=shown(photo, scale)[1], kind=kind, back_url=photo.get_absolute_url(),
    )  # fmt: skip


extensions.strikables["photo-measure"] = extensions.Struck(
    rows=lambda: PhotoMeasure.every.select_related("photo", "struck_by"),
    words=lambda row: f"“{row.what}” on {row.photo}",
    back=lambda row: f"{row.photo.get_absolute_url()}#measures",
)

urls = [
    path("photographs/<int:pk>/scale/", photo_scale, name="photo_scale"),
    path("photographs/<int:pk>/measures/<str:kind>/new/", photo_measure_add, name="photo_measure_add"),
]
