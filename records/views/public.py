"""The page that a code on a copy leads a stranger to: that it is a copy, and what the museum lets them read."""

from django.contrib.auth.decorators import login_not_required
from django.http import Http404, HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import get_object_or_404, render
from django.urls import path
from django.views.decorators.http import require_safe

from records import imaging, labelling
from records.identity import caption_of
from records.models import Item, LabelWording
from records.views.ranges import serve_file

COPIES = Item.objects.copies().select_related("label__shown_photo")


def _released(copy: Item) -> LabelWording | None:
    """The approved wording, where the museum shows it."""
    label = getattr(copy, "label", None)
    return label if label and label.is_signed and label.is_public else None


def _copy(number: str) -> Item:
    if "\0" in number:
        raise Http404("No such copy.")
    return get_object_or_404(COPIES, number=number)


@login_not_required
@require_safe
def public_copy(request: HttpRequest, number: str) -> HttpResponse:
    """Nothing of the record but its number, until a wording is approved and released."""
    copy = _copy(number)
    label = _released(copy)
    context = {
        "number": copy.number, "historic": not copy.made_here, "label": label, "caption": caption_of(copy),
        "draft": labelling.draft_of(label) if label else None, "photo": label.shown_photo if label else None,
        "record_url": copy.get_absolute_url() if request.user.is_authenticated else "",
    }  # fmt: skip
    answer = render(request, "records/public_copy.html", context)
    answer["X-Robots-Tag"] = "noindex"
    return answer


@login_not_required
@require_safe
def public_photo(request: HttpRequest, number: str) -> HttpResponseBase:
    """The one photograph that was released, as a small copy: what the camera wrote into the file stays inside."""
    label = _released(_copy(number))
    photo = label.shown_photo if label else None
    file = imaging.derivative_path(photo.sha256, "screen") if photo else None
    if photo is None or file is None or not file.is_file():
        raise Http404("No photograph of this copy is released.")
    return serve_file(
        request, file, etag=f'"{photo.sha256}-public"', as_attachment=False, filename="photograph.jpg",
        content_type="image/jpeg",
    )  # fmt: skip


urls = [
    path("c/<str:number>/", public_copy, name="public_copy"),
    path("c/<str:number>/photograph/", public_photo, name="public_photo"),
]
