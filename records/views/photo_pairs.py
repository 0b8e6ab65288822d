"""Two dated photographs over each other: chosen, aligned, looked at by slider and by blinking."""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from records import access
from records.forms.photo_pairs import PairForm, PairPointsForm
from records.models import PhotoPair
from records.photo_pairs import laid, likely
from records.services.condition import refuse_if_signed
from records.views.answering import answer_form
from records.views.condition import signed_already
from records.views.condition_page import REPORTS

PAIRS = PhotoPair.objects.select_related("report__item", "before", "after")
CHOOSE = "Two photographs of {} with their dates: the same view, the same light, the later one from this examination."
SET = (
    "Set two or three places that did not change: {} of {}. They number themselves in the order in which they are set."
)


def _keep(form: PairForm | PairPointsForm) -> PhotoPair:
    refuse_if_signed(form.instance.report)
    return form.save()


def photo_pair_add(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", PhotoPair)
    report = access.fetch(request, REPORTS, number=number)
    if report.is_signed and request.method != "POST":
        return signed_already(request, report)
    return answer_form(
        request, PairForm(request.POST or None, instance=PhotoPair(report=report), initial=likely(report)), act=_keep,
        title="Compare two photographs", sentence=CHOOSE.format(report.item.number), verb="Lay them over each other",
        then=PhotoPair.get_absolute_url, back_url=report.get_absolute_url(), template="records/photo_pair_form.html",
    )  # fmt: skip


def photo_pair(request: HttpRequest, pk: int) -> HttpResponse:
    pair = access.fetch(request, PAIRS, pk=pk)
    matrix, words = laid(pair)
    may_change = access.may(request.user, "write", PhotoPair) and not pair.report.is_signed
    context = {"pair": pair, "report": pair.report, "matrix": " ".join(f"{part:.6f}" for part in matrix),
               "words": words, "may_change": may_change}  # fmt: skip
    return render(request, "records/photo_pair.html", context)


def photo_pair_points(request: HttpRequest, pk: int, side: str) -> HttpResponse:
    pair = access.fetch(request, PAIRS, to="write", pk=pk)
    if side not in ("before", "after"):
        raise Http404("Points are set on the earlier or the later photograph.")
    if pair.report.is_signed and request.method != "POST":
        return signed_already(request, pair.report)
    photo, other = (pair.before, pair.after) if side == "before" else (pair.after, pair.before)
    on = f"{photo.taken_at:%-d %B %Y}", photo.view_words
    return answer_form(
        request, PairPointsForm(request.POST or None, instance=pair, side=side), act=_keep, verb="Keep the points",
        title=f"Points on the {'earlier' if side == 'before' else 'later'} photograph", sentence=SET.format(*on),
        then=lambda kept: _after(kept, side), back_url=pair.get_absolute_url(), template="records/photo_draw.html",
        photo=photo, alt=photo.view_words, kind="scale", shapes=[], other=other,
    )  # fmt: skip


def _after(pair: PhotoPair, side: str) -> str:
    """The other one follows, until both hold as many points."""
    if len(pair.before_points) == len(pair.after_points):
        return pair.get_absolute_url()
    return reverse("photo_pair_points", args=[pair.pk, "after" if side == "before" else "before"])


urls = [
    path("condition/<str:number>/pairs/new/", photo_pair_add, name="photo_pair_add"),
    path("condition/pairs/<int:pk>/", photo_pair, name="photo_pair"),
    path("condition/pairs/<int:pk>/points/<str:side>/", photo_pair_points, name="photo_pair_points"),
]
