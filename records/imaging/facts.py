"""What an uploaded file says of itself, or the one sentence why it is refused. Pure: no Django here."""

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import IO

from records.imaging import exif, naming
from records.imaging.naming import PictureRefused
from records.imaging.opening import KINDS, open_picture
from records.imaging.rendering import small_copies

MEGABYTE = 2**20


@dataclass(frozen=True, kw_only=True)
class PictureFacts:
    """An examined picture; width and height are those of the upright picture, `copies` its small ones as JPEG."""

    sha256: str
    size_bytes: int
    media_type: str
    extension: str
    width_px: int
    height_px: int
    seen: exif.Seen
    copies: dict[str, bytes] = field(repr=False)


def examine_picture(file: IO[bytes], name: str, *, limit_bytes: int, sizes_px: Mapping[str, int]) -> PictureFacts:
    """Read the whole file once, decode it once, and say what it is; raise PictureRefused with the reason."""
    naming.refuse_name(name)
    size_bytes = _size(file)
    _refuse_size(name, size_bytes, limit_bytes)
    with open_picture(file, name) as picture:
        media_type, extension = KINDS[picture.format or ""]
        width_px, height_px = picture.size
        copies = dict(small_copies(picture, sizes_px, name))
        seen = exif.read(picture)
    if seen.orientation >= 5:
        width_px, height_px = height_px, width_px
    return PictureFacts(
        sha256=digest_of(file), size_bytes=size_bytes, media_type=media_type, extension=extension,
        width_px=width_px, height_px=height_px, seen=seen, copies=copies,
    )  # fmt: skip


def digest_of(file: IO[bytes]) -> str:
    """SHA-256 of the whole file, read in pieces; the file is left at its beginning."""
    file.seek(0)
    digest = hashlib.sha256()
    while chunk := file.read(MEGABYTE):
        digest.update(chunk)
    file.seek(0)
    return digest.hexdigest()


def _refuse_size(name: str, size_bytes: int, limit_bytes: int) -> None:
    if size_bytes == 0:
        raise PictureRefused(f"“{name}” is empty; send the picture again.")
    if size_bytes > limit_bytes:
        raise PictureRefused(
            f"“{name}” has {size_bytes / MEGABYTE:.0f} MB, more than the {limit_bytes / MEGABYTE:.0f} MB "
            "a picture may have; save it with stronger compression."
        )


def _size(file: IO[bytes]) -> int:
    file.seek(0, 2)
    return file.tell()
