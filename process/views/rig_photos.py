"""Photographs that belong to a run: the rig explains thin places years later."""

from django.http import HttpRequest, HttpResponseBase
from django.urls import path

from process.models import Run
from records import access
from records.models import Photo
from records.views.uploading import answer_upload, upload_form

VIEWS = [Photo.View.RIG, Photo.View.SHEET, Photo.View.OVERALL, Photo.View.DETAIL]


def run_photo_add(request: HttpRequest, number: str) -> HttpResponseBase:
    run = access.fetch(request, Run, number=number)
    access.require(request, "write", Photo)
    return answer_upload(
        request, upload_form(request, views=VIEWS), join=run.photos.add, title="Photographs of the run", number=number,
        then=f"{run.get_absolute_url()}#photographs", back_url=run.get_absolute_url(),
    )  # fmt: skip


urls = [path("runs/<str:number>/photographs/new/", run_photo_add, name="run_photo_add")]
