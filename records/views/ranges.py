"""A part of a file for whoever asks for one: a download that broke off goes on where it stopped.

RFC 9110, section 14.
"""

import re
from collections.abc import Iterator
from pathlib import Path

from django.http import FileResponse, HttpRequest, HttpResponse, HttpResponseBase, StreamingHttpResponse

ONE_RANGE = re.compile(r"bytes=(\d{0,15})-(\d{0,15})")
PIECE_BYTES = 1 << 16


def serve_file(request: HttpRequest, path: Path, *, etag: str, **options: str | bool) -> HttpResponseBase:
    """The whole file, or the one part that was asked for; of several parts at once the whole is the answer."""
    whole = FileResponse(path.open("rb"), **options)
    whole["Accept-Ranges"] = "bytes"
    size = path.stat().st_size
    asked = _asked(request, etag, size)
    if asked is None:
        return whole
    first, last = asked
    if first > last:
        whole.close()
        return HttpResponse(status=416, headers={"Content-Range": f"bytes */{size}"})
    part = StreamingHttpResponse(_piece(path, first, last - first + 1), status=206)
    for name, value in whole.headers.items():
        part[name] = value
    part["Content-Range"], part["Content-Length"] = f"bytes {first}-{last}/{size}", str(last - first + 1)
    whole.close()
    return part


def _asked(request: HttpRequest, etag: str, size: int) -> tuple[int, int] | None:
    """First and last byte asked for (first > last: there are none such); None for the whole."""
    found = ONE_RANGE.fullmatch(request.headers.get("Range", "").strip())
    if request.method != "GET" or not found or not any(found.groups()):
        return None
    if request.headers.get("If-Range", etag) != etag:
        return None  # what the browser holds is of another file
    first, last = found.groups()
    if not first:
        return (size, -1) if int(last) == 0 else (max(size - int(last), 0), size - 1)
    if last and int(last) < int(first):
        return None  # not a range at all
    return int(first), min(int(last), size - 1) if last else size - 1


def _piece(path: Path, first: int, count: int) -> Iterator[bytes]:
    with path.open("rb") as file:
        file.seek(first)
        while count > 0 and (read := file.read(min(PIECE_BYTES, count))):
            count -= len(read)
            yield read
