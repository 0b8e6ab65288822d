"""The picture files themselves, for whoever is signed in; a file never changes, so a browser may keep it."""

from pathlib import Path

from django.http import Http404, HttpRequest, HttpResponseBase
from django.utils.cache import get_conditional_response

from records import access, imaging
from records.models import Photo
from records.views.ranges import serve_file

ONE_YEAR_S = 365 * 24 * 3600
ORIGINAL = "original"


def photo_file(request: HttpRequest, pk: int, size: str) -> HttpResponseBase:
    if size != ORIGINAL and size not in imaging.SIZES_PX:
        raise Http404("There is no such size of a photograph.")
    photo = access.fetch(request, Photo, pk=pk)
    etag = f'"{photo.sha256}-{size}"'
    response = get_conditional_response(request, etag=etag) or _file(request, photo, size, etag)
    response["ETag"] = etag
    response["Cache-Control"] = f"private, max-age={ONE_YEAR_S}, immutable"
    return response


def _file(request: HttpRequest, photo: Photo, size: str, etag: str) -> HttpResponseBase:
    """The original as it came, to be saved; or a small copy, made now if it is missing."""
    is_original = size == ORIGINAL
    path = imaging.original_path(photo.path) if is_original else _small(photo, size)
    if not path.is_file():
        raise Http404(f"The file of photograph {photo.pk} is not in the data folder: restore it from the backup.")
    return serve_file(
        request, path, etag=etag, as_attachment=is_original, filename=photo.original_name if is_original else path.name,
        content_type=photo.media_type if is_original else "image/jpeg",
    )  # fmt: skip


def _small(photo: Photo, size: str) -> Path:
    path = imaging.derivative_path(photo.sha256, size)
    if not path.is_file() and imaging.original_path(photo.path).is_file():
        return imaging.derive(photo.path)[size]
    return path
