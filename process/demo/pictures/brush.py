"""Painting for the bench picture: boxes, rods, and only the part of the picture they cover. Pure."""

import numpy as np

from process.demo.pictures.field import Field, Plane, smooth
from process.demo.pictures.light import Colour
from process.demo.pictures.scene import Light


def box(field: Field, left: float, right: float, bottom: float, top: float, soft: float = 0.6) -> Plane:
    inside = np.minimum(np.minimum(field.x - left, right - field.x), np.minimum(field.y - bottom, top - field.y))
    return smooth(inside, -soft, soft)


def part_of(image: Light, field: Field, left: float, right: float, bottom: float, top: float) -> tuple[Light, Field]:
    """A view of the image and its field around a box: most things here are small."""
    part, here = field.window([(left, bottom), (right, top)], 2)
    return image[here], part


def paint(image: Light, mask: Plane, colour: Colour | Light) -> None:
    image += mask[..., None] * (np.asarray(colour, dtype=np.float32) - image)


def rod(across: Plane, half: float, colour: Colour) -> Light:
    """A rod of metal: dark at its edges, a bright line left of its middle."""
    share = np.clip(across / half, -1, 1)
    tone = 0.28 + 0.75 * np.sqrt(1 - share**2) + 1.6 * np.exp(-(((share + 0.35) / 0.16) ** 2))
    return tone.astype(np.float32)[..., None] * np.asarray(colour, dtype=np.float32)
