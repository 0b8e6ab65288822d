"""Lettering as relief: around the rim or along a straight line. Pure."""

from functools import cache
from math import degrees, pi, radians
from pathlib import Path

import font_source_sans_pro
import font_source_serif_pro
import numpy as np
from PIL import Image, ImageChops, ImageDraw, ImageFont

from process.demo.pictures.field import Field, Plane, blur
from process.demo.pictures.relief import clock

_FACES = {
    "serif": (font_source_serif_pro, "SourceSerifPro-Semibold.ttf"),
    "sans": (font_source_sans_pro, "SourceSansPro-Semibold.ttf"),
    "hand": (font_source_serif_pro, "SourceSerifPro-It.ttf"),
}
# Height of a capital as a share of the type size (both faces are near it).
CAPITAL = 0.66


@cache
def face(name: str, size_px: int) -> ImageFont.FreeTypeFont:
    package, file = _FACES[name]
    folder = Path(package.__file__ or "").parent / "files"
    return ImageFont.truetype(str(folder / file), max(4, size_px))


def around(
    field: Field,
    text: str,
    *,
    radius_mm: float,
    capital_mm: float,
    middle_h: float = 12,
    spread_deg: float | None = None,
    style: str = "serif",
    feet_out: bool = False,
    only: str | None = None,
) -> Plane:
    """Where letters stand on a circle: 1 on a letter. Clockwise, or with `feet_out` along the lower edge.

    `only` draws its own letters at the places of `text` (blanks leave a letter out).
    """
    font = face(style, round(capital_mm / CAPITAL * field.px_per_mm))
    widths = [font.getlength(letter) for letter in text]
    natural = sum(widths) / field.px_per_mm / radius_mm
    total = radians(spread_deg) if spread_deg else natural * 1.06
    gap = (total - natural) / max(1, len(text) - 1)
    canvas = Image.new("L", (field.width, field.height), 0)
    hand, foot = (-1.0, 180.0) if feet_out else (1.0, 0.0)
    at = middle_h * pi / 6 - hand * total / 2
    for letter, width in zip(only or text, widths, strict=True):
        share = width / field.px_per_mm / radius_mm
        middle = at + hand * share / 2
        _set(canvas, field, letter, font, clock(middle * 6 / pi, radius_mm), foot - degrees(middle))
        at += hand * (share + gap)
    return np.asarray(canvas, dtype=np.float32) / 255


def straight(field: Field, text: str, *, at: tuple[float, float], capital_mm: float, style: str = "serif") -> Plane:
    """Letters on a straight line, centred on a place in mm."""
    canvas = Image.new("L", (field.width, field.height), 0)
    _set(canvas, field, text, face(style, round(capital_mm / CAPITAL * field.px_per_mm)), at, 0)
    return np.asarray(canvas, dtype=np.float32) / 255


def raised(field: Field, letters: Plane, height_mm: float, soften_mm: float = 0.07) -> Plane:
    """Turn flat letters into rounded ones, as they come out of a mould."""
    return blur(letters, soften_mm * field.px_per_mm) * np.float32(height_mm)


def _set(
    canvas: Image.Image,
    field: Field,
    text: str,
    font: ImageFont.FreeTypeFont,
    at: tuple[float, float],
    turn_deg: float,
) -> None:
    side = int(max(font.getlength(text), font.size) * 1.6) + 8
    glyph = Image.new("L", (side, side), 0)
    capital = font.size * CAPITAL
    ImageDraw.Draw(glyph).text((side / 2, side / 2 + capital / 2), text, font=font, fill=255, anchor="ms")
    glyph = glyph.rotate(turn_deg, Image.Resampling.BICUBIC)
    ((x, y),) = field.to_px([at])
    left, top = round(x - side / 2), round(y - side / 2)
    patch = canvas.crop((left, top, left + side, top + side))
    canvas.paste(ImageChops.lighter(patch, glyph), (left, top))
