"""Shells as they leave the bath: good ones with their flange, burnt ones with their trees. Pure."""

from collections.abc import Callable

import numpy as np

from process.demo.pictures import blank, materials
from process.demo.pictures.field import Field, Plane, Point, blur, noise, smooth
from process.demo.pictures.pieces import Piece, Side
from process.demo.pictures.relief import Relief, clock, stroke


def shell(side: Side, diameter_mm: float, flange_mm: float, seed: int) -> Callable[[Field], Piece]:
    """A shell fresh from the mould: bright contact face, a flange beyond the rim, nodules at its edge."""

    def build(field: Field) -> Piece:
        radius = blank.outline_mm(field, diameter_mm, 0.2, 3)
        relief = side(field, radius)
        blank.skin(relief, 0.4, 0.006, seed)
        _drop_to_flange(relief, radius)
        outer = _growth_edge(relief, diameter_mm / 2 + flange_mm, seed)
        mask = blank.edge_fall(relief, outer, 1.0, 0.5)
        return Piece(relief.height, mask, 1.4, materials.BARE_COPPER)

    return build


def failed_shell(side: Side, diameter_mm: float, flange_mm: float, seed: int) -> Callable[[Field], Piece]:
    """Burnt: dark powder over everything, trees at the rim."""

    def build(field: Field) -> Piece:
        radius = blank.outline_mm(field, diameter_mm, 0.2, 3)
        relief = side(field, radius)
        _drop_to_flange(relief, radius)
        near_edge = smooth(field.r, 14, diameter_mm / 2 + 3)
        relief.height += (0.03 + 0.16 * near_edge) * noise(field, 0.32, seed)
        relief.height += (0.02 + 0.12 * near_edge) * noise(field, 0.9, seed + 1)
        outer = _growth_edge(relief, diameter_mm / 2 + flange_mm - 2.6, seed)
        mask = blank.edge_fall(relief, outer, 1.0, 0.5)
        trees = _trees(relief, diameter_mm / 2 + flange_mm - 3.2, seed)
        glint = trees * smooth(noise(field, 0.5, seed + 3), 0.1, 0.9)
        mask = np.maximum(mask, trees)
        return Piece(relief.height, mask, 1.6, materials.BURNT_COPPER, [(0.35 * glint, materials.BARE_COPPER)])

    return build


def _drop_to_flange(relief: Relief, radius: Plane) -> None:
    """Beyond the rim the deposit went on growing on the flat of the mould."""
    inside = smooth(radius - relief.field.r, -0.2, 0.3)
    relief.height[:] = relief.height * inside - 1.1 * (1 - inside)


def _growth_edge(relief: Relief, radius_mm: float, seed: int) -> Plane:
    """An outline of lumps, with a raised lip of nodules."""
    field = relief.field
    chance = np.random.default_rng(seed)
    lumps = 0.35 * noise(field, 1.3, seed + 5) + 0.22 * noise(field, 0.6, seed + 6)
    outer = field.flat(radius_mm) + lumps
    relief.height += 0.55 * smooth(outer - field.r, 1.5, 0.2) + 0.25 * smooth(outer - field.r, 2.2, 0.2) * lumps
    for _ in range(150):
        at = clock(chance.uniform(0, 12), radius_mm - 0.2 - abs(chance.normal(0, 0.55)))
        relief.beads([at], chance.uniform(0.18, 0.5), chance.uniform(0.2, 0.5))
    return outer


def _trees(relief: Relief, radius_mm: float, seed: int) -> Plane:
    """Branching growth outwards from the rim, knobbed at its tips; return where it stands."""
    chance = np.random.default_rng(seed)
    where = relief.field.flat()
    for _ in range(95):
        hour, reach = chance.uniform(0, 12), radius_mm + abs(chance.normal(0, 0.5))
        stem = [clock(hour, reach)]
        for _ in range(int(chance.integers(3, 10))):
            hour, reach = hour + chance.normal(0, 0.022), reach + chance.uniform(0.25, 0.5)
            stem.append(clock(hour, reach))
            for lean in (-1, 1):
                tip = clock(hour + lean * chance.uniform(0.03, 0.13), reach + chance.uniform(0.1, 0.55))
                _twig(relief, where, [stem[-1], tip], 0.17)
        _twig(relief, where, stem, 0.26)
    return where


def _twig(relief: Relief, where: Plane, line: list[Point], width_mm: float) -> None:
    part, window = relief.field.window(line, 2.5 * width_mm)
    drawn = stroke(part, line, width_mm)
    drawn = np.maximum(drawn, smooth(np.hypot(part.x - line[-1][0], part.y - line[-1][1]), 0.24, 0.17))
    soft = blur(drawn, 0.07 * part.px_per_mm)
    where[window] = np.maximum(where[window], drawn)
    under = relief.height[window]
    relief.height[window] = np.maximum(under, np.where(soft > 0.05, 1.1 * soft - 0.9, under))
