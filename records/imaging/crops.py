"""A piece of an original, upright and sRGB, with every pixel that was taken. Django-free but for the place of files."""

from io import BytesIO
from pathlib import Path

from PIL import Image

from records.imaging import exif
from records.imaging.opening import load, open_picture
from records.imaging.rendering import QUALITY, TURNS, eight_bits, to_srgb
from records.imaging.store import unfolding

LARGEST_PX = 1600
Box = tuple[int, int, int, int]  # left, top, right, bottom in the upright picture


def crop(path: Path, box: Box, largest_px: int = LARGEST_PX) -> bytes:
    """JPEG bytes of the piece; what is larger than a screen is made smaller."""
    with unfolding(), path.open("rb") as file, open_picture(file, path.name) as picture:
        profile = picture.info.get("icc_profile")
        load(picture, path.name, max(picture.size))
        orientation = exif.read(picture).orientation
        whole = picture.transpose(TURNS[orientation]) if orientation in TURNS else picture
        piece = whole.crop(box)
        piece.thumbnail((largest_px, largest_px), Image.Resampling.BICUBIC, reducing_gap=2.0)
        piece = to_srgb(eight_bits(piece), profile)
    out = BytesIO()
    piece.info.clear()
    piece.save(out, "JPEG", quality=QUALITY)
    return out.getvalue()
