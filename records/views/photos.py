"""Photographs: the list, sending several at once, one photograph's page, and what it shows."""

from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import render
from django.urls import path

from records import access
from records.forms.photo_filter import PhotoFilter
from records.forms.photos import PhotoForm
from records.models import Item, Photo
from records.photo_doubts import added_late
from records.views.answering import answer_form
from records.views.listing import Column, export, page, wants_export
from records.views.photo_files import photo_file
from records.views.photo_page import context_of
from records.views.uploading import answer_upload, join_nothing, upload_form

PHOTOS = Photo.objects.select_related("item", "taken_by", "scale").with_moulding()
COLUMNS: list[Column] = [
    ("photograph", "pk"), ("of", lambda photo: photo.item.number if photo.item else ""), ("subject", "subject"),
    ("view", "view_words"), ("before or after", "get_moment_display"), ("caption", "caption"), ("light", "light"),
    ("added late", added_late), ("scale", "has_scale"), ("colour target", "has_colour_target"), ("taken", "taken_at"),
    ("by", lambda photo: photo.taken_by or ""), ("rights", "rights"), ("camera", "camera"), ("file", "original_name"),
    ("width, px", "width_px_count"), ("height, px", "height_px_count"), ("size, bytes", "size_bytes_count"),
    ("SHA-256", "sha256"),
]  # fmt: skip


def photo_list(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "view", Photo)
    form = PhotoFilter(request.GET)
    rows = form.narrow(PHOTOS.order_by("-pk"))
    if wants_export(request):
        return export(rows, COLUMNS, "photographs")
    context = {"form": form, "page": page(rows, request, key="-pk"), "count": rows.count()}
    return render(request, "records/photo_list.html", context)


def photo_add(request: HttpRequest, number: str) -> HttpResponseBase:
    access.require(request, "write", Photo)
    item = access.fetch(request, Item, number=number)
    report = item.condition_reports.filter(number=request.GET.get("report", ""), signed_at__isnull=True).first()
    # Who came from an examination goes back to it, and its photographs are chosen already.
    join = (lambda photo: report.photos.add(photo) if photo.item_id == item.pk else None) if report else join_nothing
    return answer_upload(
        request, upload_form(request, instance=Photo(item=item)), about={"item": item}, join=join,
        then=f"{(report or item).get_absolute_url()}#photographs", title="Add photographs", number=number,
        kind=item.title, back_url=item.get_absolute_url(),
    )  # fmt: skip


def photo(request: HttpRequest, pk: int) -> HttpResponseBase:
    return render(request, "records/photo.html", context_of(access.fetch(request, PHOTOS, pk=pk)))


def photo_edit(request: HttpRequest, pk: int) -> HttpResponseBase:
    shown = access.fetch(request, PHOTOS, to="write", pk=pk)
    form = PhotoForm(request.POST or None, instance=shown)
    return answer_form(
        request, form, title=f"Photograph “{shown}”", verb="Save", then=Photo.get_absolute_url,
        sentence="What it shows and how it was lit. The file itself is never changed.",
        back_url=shown.get_absolute_url(),
    )  # fmt: skip


urls = [
    path("photographs/", photo_list, name="photo_list"),
    path("things/<str:number>/photographs/new/", photo_add, name="photo_add"),
    path("photographs/<int:pk>/", photo, name="photo"),
    path("photographs/<int:pk>/edit/", photo_edit, name="photo_edit"),
    path("photographs/<int:pk>/<str:size>/", photo_file, name="photo_file"),
]
