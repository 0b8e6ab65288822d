"""Opening and decoding a stranger's file: each step may refuse it with one sentence. Pure."""

import struct
import warnings
import zipfile
import zlib
from functools import cache
from typing import IO

from PIL import Image

from records.imaging import naming
from records.imaging.naming import PictureRefused

# Pillow's format → media type, extension under which the original is kept. What is not named here is never opened:
# Pillow would try EPS and forty others on a stranger's file.
KINDS = {
    "JPEG": ("image/jpeg", "jpg"),
    "MPO": ("image/jpeg", "jpg"),  # a telephone's JPEG with a second small picture behind it
    "PNG": ("image/png", "png"),
    "TIFF": ("image/tiff", "tif"),
    "WEBP": ("image/webp", "webp"),
    "HEIF": ("image/heic", "heic"),
}
FORMATS = tuple(kind for kind in KINDS if kind != "MPO")  # opened by the JPEG reader
# Pillow's own threshold for a suspicious picture (width × height); it only warns there, we refuse.
PIXEL_LIMIT = 89_478_485
HEAD_BYTES = 1024  # as far as readers look for the beginning of a PDF
# What decoders raise on damaged or hostile files.
DAMAGE = (
    OSError, ValueError, SyntaxError, EOFError, LookupError, TypeError, OverflowError, RuntimeError,
    struct.error, zlib.error,
)  # fmt: skip

warnings.simplefilter("error", Image.DecompressionBombWarning)


def open_picture(file: IO[bytes], name: str) -> Image.Image:
    """Open without decoding; refuse what is no picture, too large to unfold, or moving."""
    file.seek(0)
    head = file.read(HEAD_BYTES)
    if naming.is_heif(head):
        _learn_heif()
    _refuse_two_in_one(file, head, name)
    file.seek(0)
    try:
        picture = Image.open(file, formats=FORMATS)
    except (Image.DecompressionBombError, Image.DecompressionBombWarning) as bomb:
        raise _too_many_pixels(name) from bomb
    except DAMAGE as error:
        raise PictureRefused(naming.why_no_picture(name, head)) from error
    if picture.width * picture.height > PIXEL_LIMIT:
        raise _too_many_pixels(name)
    if picture.format in {"PNG", "WEBP"} and getattr(picture, "is_animated", False):
        raise PictureRefused(f"“{name}” is a moving picture; send one still picture.")
    return picture


def _refuse_two_in_one(file: IO[bytes], head: bytes, name: str) -> None:
    """A picture that is an archive or a PDF as well passes every look at its beginning, and opens as the other."""
    other = "an archive" if zipfile.is_zipfile(file) else "a PDF" if b"%PDF-" in head[1:] else ""
    if other:
        raise PictureRefused(
            f"“{name}” is a picture and {other} in one, as harmful files are; save the picture anew and send that."
        )


def load(picture: Image.Image, name: str, size_px: int) -> None:
    """Decode to the last byte, since only that finds a file that broke off; a JPEG no larger than it is needed."""
    try:
        picture.draft(None, (size_px, size_px))
        picture.load()
    except (*DAMAGE, MemoryError) as error:
        raise PictureRefused(
            f"“{name}” is damaged or was cut off on the way and cannot be read to its end; "
            "send it again from the camera."
        ) from error


@cache
def _learn_heif() -> None:
    """Teach Pillow the telephone's format when the first such file comes; its library is large."""
    import pillow_heif

    pillow_heif.register_heif_opener(thumbnails=False, depth_images=False, aux_images=False)


def _too_many_pixels(name: str) -> PictureRefused:
    return PictureRefused(
        f"“{name}” has more than 89.5 megapixels, too many to open safely; save it smaller and send that."
    )
