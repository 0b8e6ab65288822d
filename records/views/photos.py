"""Photographs: sending several at once, one photograph's page, and what it shows."""

from typing import Any

from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import render
from django.urls import path

from records import access
from records.forms.photos import PhotoForm
from records.models import Item, Photo
from records.views.answering import answer_form
from records.views.photo_files import photo_file
from records.views.uploading import answer_upload, join_nothing, upload_form

PHOTOS = Photo.objects.select_related("item", "taken_by")


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
    shown = access.fetch(request, PHOTOS, pk=pk)
    return render(request, "records/photo.html", {"photo": shown, "facts": _facts(shown)})


def _facts(shown: Photo) -> list[tuple[Any, ...]]:
    item = shown.item
    in_frame = [name for has, name in ((shown.has_scale, "scale"), (shown.has_colour_target, "colour target")) if has]
    return [
        ("Shows", item and f"{item.number} {item.title}", item and item.get_absolute_url()),
        ("View", shown.get_view_display()),
        ("Light", shown.light),
        ("In the frame", ", ".join(in_frame) or "no scale, no colour target"),
        ("By", str(shown.taken_by or "")),
        ("Rights", shown.rights),
        ("Camera", shown.camera),
        ("File", shown.original_name),
        ("Size", f"{shown.width_px_count} × {shown.height_px_count} px, {shown.size_bytes_count / 1e6:.2f} MB"),
        ("SHA-256", shown.sha256),
    ]


def photo_edit(request: HttpRequest, pk: int) -> HttpResponseBase:
    shown = access.fetch(request, PHOTOS, to="write", pk=pk)
    form = PhotoForm(request.POST or None, instance=shown)
    return answer_form(
        request, form, title=f"Photograph {shown}", verb="Save", then=Photo.get_absolute_url,
        sentence="What it shows and how it was lit. The file itself is never changed.",
        back_url=shown.get_absolute_url(),
    )  # fmt: skip


urls = [
    path("things/<str:number>/photographs/new/", photo_add, name="photo_add"),
    path("photographs/<int:pk>/", photo, name="photo"),
    path("photographs/<int:pk>/edit/", photo_edit, name="photo_edit"),
    path("photographs/<int:pk>/<str:size>/", photo_file, name="photo_file"),
]
