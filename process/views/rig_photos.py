"""Photographs that belong to a run: the rig explains thin places years later."""

from django.core.exceptions import ValidationError
from django.http import HttpRequest, HttpResponse
from django.urls import path

from process.forms.rig_photos import RigPhotoForm
from process.models import Run
from records import access
from records.imaging import PictureRefused
from records.models import Photo
from records.services.photographs import keep_photo
from records.views.answering import answer_form


def run_photo_add(request: HttpRequest, number: str) -> HttpResponse:
    run = access.fetch(request, Run, number=number)
    access.require(request, "write", Photo)
    form = RigPhotoForm(request.POST or None, request.FILES or None, initial={"view": request.GET.get("view", "")})

    def act(form: RigPhotoForm) -> Run:
        about = {name: form.cleaned_data[name] for name in ("view", "caption", "has_scale")}
        file = form.cleaned_data["file"]
        try:
            run.photos.add(keep_photo(file=file, name=file.name, **about))
        except PictureRefused as refused:
            raise ValidationError({"file": str(refused)}) from refused
        return run

    return answer_form(
        request, form, title="Photograph of the run", number=run.number, verb="Keep the photograph", act=act,
        then=lambda run: f"{run.get_absolute_url()}#photographs", back_url=run.get_absolute_url(),
    )  # fmt: skip


urls = [path("runs/<str:number>/photographs/new/", run_photo_add, name="run_photo_add")]
