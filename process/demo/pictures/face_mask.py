"""The life mask of Bram Oostervane, plaster, about 1868, and its copper copy; in units of 4.6 mm. Pure."""

from collections.abc import Callable
from functools import partial

import numpy as np

from process.demo.pictures import blank, materials
from process.demo.pictures.field import Field, Plane, blur, noise, smooth
from process.demo.pictures.pieces import Piece
from process.demo.pictures.relief import Relief, spline

UNIT_MM = 4.6
HALF_WIDTH, HALF_HEIGHT = 84 / UNIT_MM, 131 / UNIT_MM
DEPTH = 17.0  # shallower than life: a lens far away flattens
# The sitter's left temple is on the right of the picture.
TEMPLE = (13.6, 12.6)
FLAKE_MM = (3.0, 2.0)
# Where the skin measures 0.08 mm; centre and width of each green spot, in mm.
EYE_CORNER_MM = (-13.8, 23.2)
SPOTS_MM = ((-13.8, 23.2, 1.0), (-15.3, 22.3, 0.7), (-12.9, 24.6, 0.5))


def _surface(field: Field) -> tuple[Relief, Plane]:
    """The face as swellings on an egg; return it and how far inside the outline each point lies."""
    jaw = 1 - 0.13 * smooth(field.y, 4, -22)
    wave = 0.006 * np.cos(3 * field.angle + 0.4) + 0.005 * np.cos(7 * field.angle)
    x, y = np.abs(field.x / (HALF_WIDTH * jaw)), np.abs(field.y / HALF_HEIGHT)
    far = (x**2.35 + y**2.35) ** (1 / 2.35) + wave
    egg = np.sqrt(np.clip(1 - np.clip(far, 0, 1) ** 2.6, 0, 1)).astype(np.float32)
    relief = Relief(field, egg * np.float32(DEPTH))
    relief.bump((0, 15.5), (11, 6), 0.8)
    features = relief.enlarged(1.16, (0, 0.6))
    for side in (-1, 1):
        _half(features, side)
    _nose(features)
    _mouth(features)
    return relief, (1 - far).astype(np.float32)


def _half(relief: Relief, side: int) -> None:
    relief.bump((side * 6.4, 8.9), (4.6, 1.5), 0.9, side * -3)  # brow
    relief.bump((side * 6.5, 5.6), (4.3, 2.2), -1.9)  # socket
    relief.bump((side * 6.5, 4.7), (3.1, 2.0), 2.1)  # closed lid over the ball
    lid = spline([(side * 3.4, 3.9), (side * 5.0, 3.0), (side * 6.8, 2.75), (side * 8.6, 3.2), (side * 9.8, 4.0)])
    relief.line(lid, 0.34, -0.5)
    relief.line([(x, y - 0.5) for x, y in lid], 0.55, 0.30)
    relief.line([(x, y - 1.6) for x, y in lid], 0.9, -0.28)
    relief.line(spline([(side * 3.7, 6.3), (side * 6.6, 7.1), (side * 9.7, 5.6)]), 0.5, -0.2)
    relief.bump((side * 9.0, -0.6), (4.4, 3.6), 0.9)  # cheekbone
    relief.bump((side * 9.2, -9.0), (3.6, 5.0), -0.7)  # hollow cheek
    relief.line(spline([(side * 3.9, -3.9), (side * 5.5, -6.6), (side * 6.2, -9.4)]), 1.3, -0.42)
    for k in range(9):  # hairs of the brow pressed flat by grease
        x = side * (3.2 + 0.85 * k)
        relief.line([(x, 8.5 + 0.11 * k - 0.012 * k * k), (x + side * 1.2, 9.2 + 0.06 * k - 0.02 * k * k)], 0.28, 0.15)
    relief.bump((side * 15.4, 8.0), (2.4, 5.0), -0.8)  # temple


def _nose(relief: Relief) -> None:
    relief.bump((0, 3.6), (1.8, 4.8), 2.2)
    relief.bump((0.05, -0.4), (2.1, 3.2), 2.4)
    relief.bump((0.1, -2.6), (2.3, 1.9), 2.5)
    for side in (-1, 1):
        relief.bump((side * 2.6, -3.3), (1.35, 1.2), 1.7)
        relief.bump((side * 1.15, -4.5), (0.75, 0.42), -1.9, side * 20)
        relief.line(spline([(side * 3.5, -2.3), (side * 3.75, -3.4), (side * 3.0, -4.4)]), 0.5, -0.5)
    relief.bump((0, -5.0), (2.4, 0.6), -0.9)


def _mouth(relief: Relief) -> None:
    relief.bump((0, -9.6), (5.6, 4.2), 1.2)
    relief.line(spline([(-0.35, -5.2), (-0.4, -7.2)]), 0.5, 0.3)
    relief.line(spline([(0.4, -5.2), (0.45, -7.2)]), 0.5, 0.3)
    relief.bump((0, -8.3), (3.6, 0.85), 0.9)
    relief.bump((0, -10.5), (3.1, 0.95), 1.15)
    line = spline([(-4.7, -9.6), (-2.4, -9.15), (0, -9.4), (2.4, -9.15), (4.7, -9.6)])
    relief.line(line, 0.36, -0.9)
    relief.bump((0, -12.3), (3.4, 0.8), -0.9)
    relief.bump((0, -15.6), (3.9, 2.5), 1.9)
    # moustache and chin tuft, matted by the plaster
    for k in range(26):
        x = -4.9 + 9.8 * k / 25
        relief.line([(x * 0.72, -6.7), (x * 1.12, -8.3 - 0.16 * abs(x))], 0.42, 0.16)


def _build(
    field: Field, material: materials.Material, *, flake: bool = False, powder: bool = False, spots: bool = False
) -> Piece:
    relief, inside = _surface(field)
    blank.skin(relief, 0.5, 0.02, 61)
    blank.pits(relief, 50, 63, 24)
    relief.height *= smooth(inside, -0.01, 0.03)
    patches = []
    if powder:
        far = np.hypot((field.x - TEMPLE[0]) / 1.1, (field.y - TEMPLE[1]) / 1.6) + 0.3 * noise(field, 0.7, 65)
        patch = smooth(far, 1.35, 0.6) * smooth(noise(field, 0.5, 66), -1.1, 0.5)
        relief.height += patch * 0.035 * noise(field, 0.25, 67)
        patches.append((0.7 * patch, materials.RAW_PLASTER))
    if flake:
        half = [size / UNIT_MM / 2 for size in FLAKE_MM]
        dx, dy = field.x - TEMPLE[0] - 0.6, field.y - TEMPLE[1] + 1.2
        far = np.maximum(np.abs(dx) / half[0], np.abs(dy) / half[1]) + 0.25 * noise(field, 0.2, 68)
        lost = smooth(far, 1.15, 0.9)
        relief.height -= 0.16 * lost
        patches.append((lost, materials.RAW_PLASTER))
    if spots:
        patches += [_spot(relief, field, *spot) for spot in SPOTS_MM]
    mask = smooth(inside * HALF_WIDTH, -0.08, 0.08)
    return Piece(blur(relief.height, 0.6), mask, 9.0, material, patches)


def _spot(relief: Relief, field: Field, x_mm: float, y_mm: float, wide_mm: float) -> tuple[Plane, materials.Material]:
    """A green crust that has come up through the skin."""
    far = np.hypot(field.x - x_mm / UNIT_MM, field.y - y_mm / UNIT_MM) / (wide_mm / UNIT_MM / 2)
    crust = smooth(far, 1.15, 0.7)
    relief.height += 0.05 * crust
    return crust, materials.VERDIGRIS


def plaster(*, flake: bool = False) -> Callable[[Field], Piece]:
    """The plaster with its friable patch at the left temple; after moulding a flake of shellac is gone."""
    return partial(_build, material=materials.PLASTER, powder=True, flake=flake)


def skin(field: Field) -> Piece:
    """The copper skin fresh from the bath, rinsed, before the patina."""
    return _build(field, materials.BARE_COPPER)


def copper(field: Field) -> Piece:
    """The core electrotype R.2026.5, patinated dark."""
    return _build(field, materials.COPY_BRONZE)


def spotted(field: Field) -> Piece:
    """The same half a year later: green spots at the inner eye corner R."""
    return _build(field, materials.COPY_BRONZE, spots=True)
