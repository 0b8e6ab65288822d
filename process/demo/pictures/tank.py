"""What stands before the bath: rail, supports, cable, thermometer, and the glass itself. Pure."""

import numpy as np
from PIL import Image, ImageDraw

from process.demo.pictures.brush import box, paint, part_of, rod
from process.demo.pictures.field import Field, smooth
from process.demo.pictures.letters import face
from process.demo.pictures.scene import Light

TANK_MM = (420.0, 300.0)
BATH_TOP_MM, GLASS_MM = 108.0, 8.0
COPPER, STEEL = (0.52, 0.21, 0.12), (0.34, 0.35, 0.36)


def rails(image: Light, field: Field) -> None:
    """The cathode rail along the tank on its supports, the cable that feeds it, a thermometer in the bath."""
    view, part = part_of(image, field, -152, -124, -62, 184)
    lean = part.x + 140 + 0.03 * part.y
    stem = smooth(2.4 - np.abs(lean), -0.5, 0.5) * smooth(part.y, -60, -59) * smooth(part.y, 182, 181)
    paint(view, 0.45 * stem, rod(lean, 2.4, (0.75, 0.78, 0.8)))
    half = TANK_MM[0] / 2
    view, part = part_of(image, field, -half - 32, half + 32, 128, 154)
    view *= (1 - 0.35 * box(part, -200, 200, 134, 142, 5))[..., None]
    paint(view, box(part, -half - 30, half + 30, 142, 151, 0.5), rod(146.5 - part.y, 4.5, COPPER))
    for x in (-205.0, -62.0, 62.0, 205.0):
        view, part = part_of(image, field, x - 8, x + 8, 126, 166)
        foot = 126 if abs(x) > 200 else 138
        paint(view, box(part, x - 6, x + 6, foot, 156, 0.8), rod(part.x - x, 6, STEEL))
        paint(view, box(part, x - 3, x + 3, 155, 163, 0.6), rod(part.x - x, 3, STEEL))
    view, part = part_of(image, field, 228, 330, 138, 220)
    lead = part.y - 146 - 0.0033 * np.clip(part.x - 235, 0, None) ** 2.0
    paint(
        view,
        smooth(3.2 - np.abs(lead), -0.5, 0.5) * smooth(part.x, 232, 234),
        rod(lead, 3.4, (0.30, 0.03, 0.025)),
    )


def glass(image: Light, field: Field) -> None:
    """Walls that catch the light, the line of the surface, and the window in the front pane."""
    half, bottom, top = TANK_MM[0] / 2, -TANK_MM[1] / 2, TANK_MM[1] / 2 - 22
    for left, right, foot in (
        (-half, -half + GLASS_MM, bottom),
        (half - GLASS_MM, half, bottom),
        (-half, half, None),
    ):
        view, part = part_of(image, field, left, right, bottom, top if foot else bottom + GLASS_MM)
        paint(
            view,
            0.42 * box(part, left, right, bottom, top if foot else bottom + GLASS_MM),
            (0.30, 0.46, 0.46),
        )
    for x in (-half + 0.8, half - 0.8, -half + GLASS_MM, half - GLASS_MM):
        view, part = part_of(image, field, x - 2, x + 2, bottom, top)
        view += (0.34 * box(part, x - 0.9, x + 0.9, bottom, top))[..., None]
    view, part = part_of(image, field, -half, half, top - 4, top + 1)
    paint(view, 0.55 * box(part, -half, half, top - 3, top, 0.7), (0.72, 0.80, 0.80))
    _surface(image, field)
    _level_mark(image, field)


def _surface(image: Light, field: Field) -> None:
    """The line where the solution stands, and a window mirrored in the front pane."""
    half, bottom, top = TANK_MM[0] / 2, -TANK_MM[1] / 2, TANK_MM[1] / 2 - 22
    view, part = part_of(image, field, -half, half, BATH_TOP_MM - 5, BATH_TOP_MM + 5)
    surface = np.exp(-(((part.y - BATH_TOP_MM) / 1.5) ** 2)) * smooth(half - GLASS_MM - np.abs(part.x), -0.5, 0.5)
    view += (0.38 * surface)[..., None] * np.asarray((0.6, 0.9, 1.0), dtype=np.float32)
    view, part = part_of(image, field, -half, 20, bottom, top)
    slant = part.x + 0.35 * part.y
    window = smooth(np.abs(slant + 118), 31, 27) + 0.7 * smooth(np.abs(slant + 64), 13, 10)
    view += (0.04 * window * smooth(part.x, -half, -half + 2) * (0.4 + 0.6 * smooth(part.y, -120, 90)))[..., None]


def _level_mark(image: Light, field: Field) -> None:
    """The 60 litre mark on the glass."""
    view, part = part_of(image, field, 160, 195, 90, BATH_TOP_MM)
    canvas = Image.new("L", (part.width, part.height), 0)
    ((x, y),) = part.to_px([(190.0, BATH_TOP_MM - 3)])
    size = round(9 * field.px_per_mm)
    ImageDraw.Draw(canvas).text((x, y), "60 L", font=face("sans", size), fill=255, anchor="rt")
    paint(view, 0.8 * np.asarray(canvas, dtype=np.float32) / 255, (0.85, 0.86, 0.84))
