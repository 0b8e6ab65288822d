"""What lies under the lamp: each piece built from its relief, its edge, its material and its history.

Pure.
"""

from collections.abc import Callable
from dataclasses import dataclass
from dataclasses import field as default
from typing import TypeAlias

import numpy as np

from process.demo.pictures import blank, coin, materials, medals, ship
from process.demo.pictures.field import Field, Plane, blur, noise, smooth
from process.demo.pictures.light import Material
from process.demo.pictures.relief import Relief, clock

Side: TypeAlias = Callable[[Field, Plane], Relief]


@dataclass(frozen=True)
class Piece:
    """A surface, where it is, how thick it lies on the table, and patches of another material on it."""

    height: Plane
    mask: Plane
    thickness_mm: float
    material: Material
    patches: list[tuple[Plane, Material]] = default(default_factory=list)


def cast_medal(side: Side, *, knocked_h: float | None = None) -> Callable[[Field], Piece]:
    """The bronze of 1624: uneven, pitted, worn; the obverse with a knock in its edge."""

    def build(field: Field) -> Piece:
        radius = blank.outline_mm(field, medals.DIAMETER_MM, 0.25, 3)
        relief = side(field, radius)
        if knocked_h is not None:
            blank.knock(relief, radius, knocked_h)
        blank.skin(relief, 0.3, 0.012, 4)
        blank.pits(relief, 40, 6, 27)
        relief.height[:] = blur(relief.height, 0.06 * field.px_per_mm)
        mask = blank.edge_fall(relief, radius, medals.THICKNESS_MM)
        return Piece(relief.height, mask, medals.THICKNESS_MM, materials.OLD_BRONZE)

    return build


def copy(side: Side, diameter_mm: float, material: Material, thickness_mm: float = 3.0) -> Callable[[Field], Piece]:
    """A joined copy: the seam shows as a fine line in the rounded edge."""

    def build(field: Field) -> Piece:
        radius = blank.outline_mm(field, diameter_mm, 0.2, 3)
        relief = side(field, radius)
        blank.skin(relief, 0.35, 0.007, 14)
        relief.height[:] = blur(relief.height, 0.045 * field.px_per_mm)
        mask = blank.edge_fall(relief, radius, thickness_mm)
        return Piece(relief.height, mask, thickness_mm, material)

    return build


def lightship(side: Side, *, powder_h: float | None = None) -> Callable[[Field], Piece]:
    """The electrotype of 1889; white powder stands where its seam is open."""

    def build(field: Field) -> Piece:
        radius = blank.outline_mm(field, ship.DIAMETER_MM, 0.2, 12)
        relief = side(field, radius)
        blank.skin(relief, 0.3, 0.008, 24)
        blank.pits(relief, 24, 26, 20)
        relief.height[:] = blur(relief.height, 0.05 * field.px_per_mm)
        mask = blank.edge_fall(relief, radius, 3.0)
        patches = []
        if powder_h is not None:
            x, y = clock(powder_h, ship.DIAMETER_MM / 2 - 0.45)
            far = np.hypot((field.x - x), (field.y - y)) + 0.35 * noise(field, 0.4, 31)
            crust = smooth(far, 1.15, 0.45)
            relief.height += crust * (0.2 + 0.1 * noise(field, 0.18, 32))
            patches = [(crust * smooth(noise(field, 0.25, 33), -0.9, -0.1), materials.PLASTER)]
        return Piece(relief.height, mask, 3.0, materials.HISTORIC, patches)

    return build


def old_coin(side: Side, *, gilt: bool = False) -> Callable[[Field], Piece]:
    """Struck silver, not round, worn in the middle."""

    def build(field: Field) -> Piece:
        radius = blank.outline_mm(field, coin.DIAMETER_MM, 0.9, 71)
        relief = side(field, radius)
        worn = smooth(field.r + 2 * noise(field, 6, 72), 0, 13)
        relief.height *= 0.62 + 0.38 * worn
        blank.skin(relief, 0.35, 0.012, 73)
        blank.pits(relief, 60, 74, 14)
        relief.height[:] = blur(relief.height, 0.07 * field.px_per_mm)
        mask = blank.edge_fall(relief, radius, coin.THICKNESS_MM, 0.4)
        patches = []
        if gilt:
            gold = blur(coin.gilding(field), 0.06 * field.px_per_mm) * smooth(noise(field, 0.5, 75), -0.7, 0.1)
            patches = [(gold, materials.GOLD)]
        return Piece(relief.height, mask, coin.THICKNESS_MM, materials.OLD_SILVER, patches)

    return build
