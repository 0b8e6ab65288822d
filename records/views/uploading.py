"""The one way photographs are sent: all at once, or one by one by a script; what became of each is said by name."""

from collections.abc import Callable
from typing import Any

from django.contrib import messages
from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import redirect, render

from records.forms import sending
from records.forms.photos import PhotoUploadForm
from records.models import Party, Photo
from records.services.photographs import Sent, keep_each

PIECE = "Register-Piece"  # header of a script that sends file by file
TWICE = "These photographs came twice and are kept once."


def upload_form(request: HttpRequest, **options: Any) -> PhotoUploadForm:
    """The form, with the view of the address and the person who is signed in as its photographer."""
    offered = {
        "view": request.GET.get("view", Photo.View.OVERALL),
        "taken_by": Party.objects.filter(user=request.user).first(),
    }
    return PhotoUploadForm(request.POST or None, request.FILES or None, initial=offered, **options)


def join_nothing(photo: Photo) -> None:
    """For a photograph that belongs to its thing and to nothing further."""


def answer_upload(
    request: HttpRequest,
    form: PhotoUploadForm,
    *,
    then: str,
    join: Callable[[Photo], None] = join_nothing,
    about: dict[str, Any] | None = None,
    **context: Any,
) -> HttpResponseBase:
    """Show the form; keep what was sent; go on if all is well, else say what became of each file."""
    sending.offer(form)
    sent: list[Sent] = []
    if request.method == "POST" and form.is_valid():
        try:
            with sending.taken(form, request):
                sent = keep_each(files=form.cleaned_data["files"], join=join, **form.about(), **about or {})
        except sending.SentAlready:
            messages.info(request, TWICE)
            return redirect(then)
    if request.method == "POST" and PIECE in request.headers:
        return render(request, "records/_photos_sent.html", {"sent": sent or _unread(form)})
    if sent and all(one.photo and not one.sentence for one in sent):
        messages.success(request, _kept_words([one.photo for one in sent if one.photo]))
        return redirect(then)
    if sent:
        sending.renew(form)
        for one in sent:
            if one.sentence:
                form.add_error("files", one.sentence)
    context = {"form": form, "sent": sent, "then": then, **context}
    return render(request, "records/photo_add.html", context, status=422 if form.errors else 200)


def _unread(form: PhotoUploadForm) -> list[Sent]:
    """A piece whose words could not be read: nothing of it is kept."""
    wrong = " ".join(
        f"{form[name].label}: {' '.join(found)}" for name, found in form.errors.items() if name in form.fields
    )
    names = [file.name for file in form.files.getlist("files")] or ["This file"]
    return [Sent(name, None, wrong) for name in names]


def _kept_words(kept: list[Photo]) -> str:
    undated = sum(photo.is_undated for photo in kept)
    words = f"Kept: {', '.join(photo.original_name for photo in kept)}."
    return f"{words} {undated} without a date: open each and write when it was taken." if undated else words
