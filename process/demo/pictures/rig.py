"""The bench: two moulds hanging in the copper bath, bagged anodes at the ends, seen through the glass.

Pure.
"""

from functools import cache

import numpy as np
from PIL import Image, ImageFilter

from process.demo.pictures import light, medals, props, scene
from process.demo.pictures.brush import box, paint, part_of, rod
from process.demo.pictures.field import Field, Plane, blur, noise, smooth
from process.demo.pictures.moulded import mould
from process.demo.pictures.scene import Light
from process.demo.pictures.tank import BATH_TOP_MM, COPPER, GLASS_MM, TANK_MM, glass, rails

WALL, BENCH = (0.30, 0.31, 0.30), (0.155, 0.125, 0.095)
BLUE = (0.010, 0.155, 0.33)
BAG = (0.50, 0.49, 0.44)
ANODE_RAIL_MM = 132.0
MOULDS_AT = ((-62.0, -18.0), (62.0, -18.0))


def draw(size_px: int, number: str, date_text: str) -> Image.Image:
    """The rig before the current is switched on."""
    frame = scene.Frame(size_px, 390.0)
    field = Field(frame.width, frame.height, frame.px_per_mm, (0, -26))
    image = _room(field)
    _bath(image, field)
    for at in ((-165.0, -22.0), (165.0, -22.0)):
        _anode(image, field, at)
    for at, side in zip(MOULDS_AT, ("obverse", "reverse"), strict=True):
        _hang(image, field, at, side)
    _veil(image, field)
    rails(image, field)
    glass(image, field)
    photograph = scene.develop(image, exposure=1.12, vignette=0.34)
    photograph = photograph.filter(ImageFilter.GaussianBlur(size_px / 2600))
    return props.lay_out(photograph, frame, number, ("rig, front", date_text))


def _room(field: Field) -> Light:
    """A pale wall out of focus above a dark wooden bench."""
    glow = np.exp(-(((field.x + 190) / 260) ** 2 + ((field.y - 150) / 190) ** 2)).astype(np.float32)
    image = (0.62 + 1.0 * glow)[..., None] * np.asarray(WALL, dtype=np.float32)
    edge = -TANK_MM[1] / 2 + 14
    view, part = part_of(image, field, -400, 400, -400, edge + 3)
    fibre = np.sin(part.y * 1.1 + 1.6 * noise(part, 55, 202) + 0.5 * noise(part, 9, 204))
    grain = 1 + 0.10 * fibre + 0.05 * noise(part, 1.2, 203)
    bench = (grain * (1.15 - 0.0012 * (part.x + 150)))[..., None] * np.asarray(BENCH, dtype=np.float32)
    paint(view, smooth(part.y, edge + 1.5, edge - 1.5), bench)
    under = box(part, -TANK_MM[0] / 2 - 8, TANK_MM[0] / 2 + 26, edge - 42, edge - 4, 14)
    view *= (1 - 0.6 * under)[..., None]
    return image


def _inside(field: Field, top: float) -> Plane:
    half = TANK_MM[0] / 2 - GLASS_MM
    return box(field, -half, half, -TANK_MM[1] / 2 + GLASS_MM, top, 0.7)


def _bath(image: Light, field: Field) -> None:
    """Blue solution: light from behind falls off with depth, a bright line where it climbs the glass."""
    depth = np.clip((BATH_TOP_MM - field.y) / 250, 0, 1)
    glow = np.exp(-(((field.x + 95) / 210) ** 2)).astype(np.float32)
    strength = (0.42 + 0.85 * glow) * (1.12 - 0.62 * depth) * (1 + 0.03 * noise(field, 30, 211))
    solution = strength[..., None] * np.asarray(BLUE, dtype=np.float32)
    solution += (0.10 * glow * (1 - depth))[..., None] * np.asarray((0.25, 0.6, 0.8), dtype=np.float32)
    paint(image, _inside(field, BATH_TOP_MM), solution)


def _anode(image: Light, field: Field, at: tuple[float, float]) -> None:
    """A bag of white cloth over a bar of copper; its rail runs front to back, seen on its end."""
    view, part = part_of(image, field, at[0] - 26, at[0] + 26, at[1] - 110, ANODE_RAIL_MM + 8)
    x, y = part.x - at[0], part.y - at[1]
    swing = x + 2.0 * noise(part, 45, 221) + 0.5 * noise(part, 9, 223)
    width = 20.5 + 0.9 * noise(part, 30, 224) - 2.2 * smooth(y, 84, 98) + 2.5 * smooth(y, 98, 106)
    mask = smooth(width - np.abs(x), -0.8, 0.8) * smooth(y, -104, -102) * smooth(y, 106, 104)
    folds = 0.74 + 0.16 * np.sin(swing * 0.62) + 0.09 * np.sin(swing * 1.4 + 0.02 * y) + 0.04 * noise(part, 4, 222)
    folds *= (1.02 - 0.9 * (x / 24) ** 4) * (1 - 0.45 * np.exp(-(((y - 96) / 2.2) ** 2)))
    paint(view, mask, folds.astype(np.float32)[..., None] * np.asarray(BAG, dtype=np.float32) * np.float32(0.62))
    hook = smooth(2.6 - np.abs(x), -0.6, 0.6) * smooth(y, 96, 100) * smooth(part.y, 132, 130)
    paint(view, hook, rod(x, 2.6, COPPER))
    end = np.hypot(x, part.y - ANODE_RAIL_MM)
    paint(
        view,
        smooth(6.2 - end, -0.5, 0.5),
        (0.62 - 0.05 * end)[..., None] * np.asarray(COPPER, dtype=np.float32),
    )


@cache
def _mould_picture(side: str, side_px: int) -> tuple[Light, Plane]:
    field = Field(side_px, side_px, side_px / 80)
    build = medals.obverse if side == "obverse" else medals.marked_reverse
    piece = mould(build, medals.DIAMETER_MM, coated=True)(field)
    lamp = light.Lamp(azimuth_deg=142, elevation_deg=40)
    lit = light.shade(field, piece.height, piece.material, lamp)
    for patch, material in piece.patches:
        lit += (light.shade(field, piece.height, material, lamp) - lit) * patch[..., None]
    return lit, piece.mask


def _hang(image: Light, field: Field, at: tuple[float, float], side: str) -> None:
    """A coated mould on two wires, weighted at the foot."""
    view, part = part_of(image, field, at[0] - 28, at[0] + 28, at[1] + 18, 150)
    for lean in (-1, 1):
        x = part.x - at[0] - lean * 24 * smooth(part.y, 150, at[1] + 22)
        wire = smooth(1.0 - np.abs(x), -0.5, 0.5) * smooth(part.y, at[1] + 24, at[1] + 26) * smooth(part.y, 147, 145)
        paint(view, wire, rod(x, 1.0, COPPER))
    lit, mask = _mould_picture(side, round(80 * field.px_per_mm))
    ((x_px, y_px),) = field.to_px([at])
    left, top = round(x_px - mask.shape[1] / 2), round(y_px - mask.shape[0] / 2)
    here = (slice(top, top + mask.shape[0]), slice(left, left + mask.shape[1]))
    image[here] *= (1 - 0.4 * blur(np.roll(mask, (6, 8), (0, 1)), 1.6 * field.px_per_mm))[..., None]
    image[here] += (lit - image[here]) * mask[..., None]


def _veil(image: Light, field: Field) -> None:
    """What hangs in the bath is seen through blue: red goes first."""
    wet = _inside(field, BATH_TOP_MM)[..., None]
    through = np.asarray((0.36, 0.74, 0.98), dtype=np.float32)
    image *= 1 + wet * (through - 1)
    image += wet * np.asarray((0.004, 0.035, 0.07), dtype=np.float32)
