"""A piece of a photograph as sharp as it was taken, for whoever looks closely."""

from django.http import Http404, HttpRequest, HttpResponse
from django.urls import path
from django.utils.cache import get_conditional_response

from records import access, imaging
from records.imaging.tiles import crop
from records.models import Photo
from records.views.photo_files import ONE_YEAR_S


def photo_crop(request: HttpRequest, pk: int) -> HttpResponse:
    photo = access.fetch(request, Photo, pk=pk)
    box = _box(request, photo)
    etag = f'"{photo.sha256}-{"-".join(map(str, box))}"'
    response = get_conditional_response(request, etag=etag)
    if response is None:
        if not imaging.original_path(photo.path).is_file():
            raise Http404(f"The file of photograph {pk} is not in the data folder: restore it from the backup.")
        response = HttpResponse(crop(photo.path, box), content_type="image/jpeg")
    response["ETag"] = etag
    response["Cache-Control"] = f"private, max-age={ONE_YEAR_S}, immutable"
    return response


def _box(request: HttpRequest, photo: Photo) -> tuple[int, int, int, int]:
    """Left, top, right, bottom inside the picture; without numbers the whole of it."""
    width, height = photo.width_px_count, photo.height_px_count
    try:
        x, y, w, h = (int(request.GET.get(k, usual)) for k, usual in {"x": 0, "y": 0, "w": width, "h": height}.items())
    except ValueError as error:
        raise Http404("A piece of a photograph is named by four whole numbers: x, y, w and h.") from error
    left, top = max(x, 0), max(y, 0)
    right, bottom = min(x + w, width), min(y + h, height)
    if right <= left or bottom <= top:
        raise Http404("That piece lies outside the photograph.")
    return left, top, right, bottom


urls = [path("photographs/<int:pk>/piece/", photo_crop, name="photo_crop")]
