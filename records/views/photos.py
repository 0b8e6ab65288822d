"""Photographs: sending several at once, one photograph's page, and what it shows."""

from typing import Any

from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import redirect, render
from django.urls import path

from records import access, imaging
from records.forms import sending
from records.forms.photos import PhotoForm, PhotoUploadForm
from records.models import ConditionReport, Item, Party, Photo
from records.services.photographs import keep_photo
from records.views.answering import answer_form
from records.views.photo_files import photo_file

PHOTOS = Photo.objects.select_related("item", "taken_by")


def photo_add(request: HttpRequest, number: str) -> HttpResponseBase:
    access.require(request, "write", Photo)
    item = access.fetch(request, Item, number=number)
    taken_by = Party.objects.filter(user=request.user).first()
    offered = {"view": request.GET.get("view", "overall"), "taken_by": taken_by}
    form = PhotoUploadForm(request.POST or None, request.FILES or None, initial=offered)
    report = item.condition_reports.filter(number=request.GET.get("report", ""), signed_at__isnull=True).first()
    kept: list[Photo] = []
    sending.offer(form)
    if request.method == "POST" and form.is_valid():
        try:
            with sending.taken(form, request):
                kept, refused = _keep_each(form, item)
        except sending.SentAlready:
            messages.info(request, "These photographs came twice and are kept once.")
            return redirect(f"{item.get_absolute_url()}#photographs")
        if not refused:
            messages.success(request, _kept_words(kept))
            return redirect(_shown_where(item, report, kept))
        sending.renew(form)
        for sentence in refused:
            form.add_error("files", sentence)
    context = {"item": item, "form": form, "kept": kept, "title": f"Photographs of {number}"}
    return render(request, "records/photo_add.html", context, status=422 if form.errors else 200)


def _shown_where(item: Item, report: ConditionReport | None, kept: list[Photo]) -> str:
    """Who came from an examination goes back to it, and its photographs are chosen already."""
    if report is None:
        return f"{item.get_absolute_url()}#photographs"
    with transaction.atomic():
        report.photos.add(*kept)
    return f"{report.get_absolute_url()}#photographs"


def _keep_each(form: PhotoUploadForm, item: Item) -> tuple[list[Photo], list[str]]:
    """Keep what is a picture and say by name why another is not; a refused file leaves nothing behind."""
    kept, refused = [], []
    for file in form.cleaned_data["files"]:
        try:
            photo = keep_photo(file=file, name=file.name, item=item, **form.about())
            imaging.derive(photo.path)
            kept.append(photo)
        except imaging.PictureRefused as reason:
            refused.append(str(reason))
    return kept, refused


def _kept_words(kept: list[Photo]) -> str:
    undated = sum(photo.is_undated for photo in kept)
    words = f"Kept: {', '.join(photo.original_name for photo in kept)}."
    return f"{words} {undated} without a date: open each and write when it was taken." if undated else words


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
