"""What an uploaded file says of itself, or the one sentence why it is refused. Pure: no Django here."""

import hashlib
import struct
import warnings
import zlib
from dataclasses import dataclass
from datetime import datetime
from typing import IO

from PIL import Image

from records.imaging import exif, naming
from records.imaging.naming import PictureRefused

__all__ = ["PictureFacts", "PictureRefused", "examine_picture", "open_picture"]

# Formats we mean to read; naming them keeps Pillow from trying EPS and forty others on a stranger's file.
FORMATS = ("JPEG", "PNG", "TIFF", "WEBP")
KINDS = {  # Pillow's format → media type, extension under which the original is kept
    "JPEG": ("image/jpeg", "jpg"),
    "MPO": ("image/jpeg", "jpg"),  # a telephone's JPEG with a second small picture behind it
    "PNG": ("image/png", "png"),
    "TIFF": ("image/tiff", "tif"),
    "WEBP": ("image/webp", "webp"),
}
# Pillow's own threshold for a suspicious picture (width × height); it only warns there, we refuse.
PIXEL_LIMIT = 89_478_485
CHUNK_BYTES = 1 << 20
# Enough for a look at every byte of a JPEG without unfolding all its pixels.
LOOK_PX = (800, 800)
# What decoders raise on damaged or hostile files.
DAMAGE = (
    OSError,
    ValueError,
    SyntaxError,
    EOFError,
    LookupError,
    TypeError,
    OverflowError,
    struct.error,
    zlib.error,
)

warnings.simplefilter("error", Image.DecompressionBombWarning)


@dataclass(frozen=True, kw_only=True)
class PictureFacts:
    """An examined picture; width and height are those of the upright picture."""

    sha256: str
    size_bytes: int
    media_type: str
    extension: str
    width_px: int
    height_px: int
    taken_at: datetime | None
    camera: str
    orientation: int


def examine_picture(file: IO[bytes], name: str, *, limit_bytes: int) -> PictureFacts:
    """Read the whole file once, decode it once, and say what it is; raise PictureRefused with the reason."""
    naming.refuse_name(name)
    size_bytes = _size(file)
    if size_bytes == 0:
        raise PictureRefused(f"“{name}” is empty; send the picture again.")
    if size_bytes > limit_bytes:
        raise PictureRefused(
            f"“{name}” has {size_bytes / 2**20:.0f} MB, more than the {limit_bytes / 2**20:.0f} MB "
            "a picture may have; save it with stronger compression."
        )
    with open_picture(file, name) as picture:
        media_type, extension = KINDS[picture.format or ""]
        width_px, height_px = picture.size
        _load(picture, name)
        seen = exif.read(picture)
    if seen.orientation >= 5:
        width_px, height_px = height_px, width_px
    return PictureFacts(
        sha256=_digest(file),
        size_bytes=size_bytes,
        media_type=media_type,
        extension=extension,
        width_px=width_px,
        height_px=height_px,
        taken_at=seen.taken_at,
        camera=seen.camera,
        orientation=seen.orientation,
    )


def open_picture(file: IO[bytes], name: str) -> Image.Image:
    """Open without decoding; refuse what is no picture, too large to unfold, or moving."""
    file.seek(0)
    try:
        picture = Image.open(file, formats=FORMATS)
    except (Image.DecompressionBombError, Image.DecompressionBombWarning) as bomb:
        raise _too_many_pixels(name) from bomb
    except DAMAGE as error:
        file.seek(0)
        raise PictureRefused(naming.why_no_picture(name, file.read(512))) from error
    if picture.width * picture.height > PIXEL_LIMIT:
        raise _too_many_pixels(name)
    if picture.format in {"PNG", "WEBP"} and getattr(picture, "is_animated", False):
        raise PictureRefused(f"“{name}” is a moving picture; send one still picture.")
    return picture


def _load(picture: Image.Image, name: str) -> None:
    """Decode to the last byte: only that finds a file that broke off on the way."""
    try:
        picture.draft(None, LOOK_PX)
        picture.load()
    except (*DAMAGE, MemoryError) as error:
        raise PictureRefused(
            f"“{name}” is damaged or was cut off on the way and cannot be read to its end; "
            "send it again from the camera."
        ) from error


def _too_many_pixels(name: str) -> PictureRefused:
    return PictureRefused(
        f"“{name}” has more than 89.5 megapixels, too many to open safely; save it smaller and send that."
    )


def _size(file: IO[bytes]) -> int:
    file.seek(0, 2)
    return file.tell()


def _digest(file: IO[bytes]) -> str:
    digest = hashlib.sha256()
    file.seek(0)
    while chunk := file.read(CHUNK_BYTES):
        digest.update(chunk)
    file.seek(0)
    return digest.hexdigest()
