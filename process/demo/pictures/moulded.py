"""Silicone moulds: the piece in the negative, bare or coated to conduct. Pure."""

from collections.abc import Callable

import numpy as np

from process.demo.pictures import blank, materials
from process.demo.pictures.field import Field, noise, smooth
from process.demo.pictures.pieces import Piece, Side
from process.demo.pictures.relief import Relief, clock


def mould(side: Side, diameter_mm: float, *, coated: bool = False, torn: bool = False) -> Callable[[Field], Piece]:
    """A one-sided silicone mould: the piece in the negative, left and right exchanged."""

    def build(field: Field) -> Piece:
        radius = blank.outline_mm(field, diameter_mm, 0.2, 3)
        relief = side(field, radius)
        inside = smooth(radius - field.r, -0.15, 0.35)
        cavity = (inside * (relief.height + 1.3))[:, ::-1]
        block = Relief(field, np.ascontiguousarray(-cavity))
        if torn:
            _tear(block, diameter_mm / 2)
        blank.skin(block, 1.2, 0.01, 44)
        outer = blank.outline_mm(field, diameter_mm + 17, 0.5, 8)
        mask = blank.edge_fall(block, outer, 1.1, 1.1)
        patches = [(inside[:, ::-1] * (0.93 + 0.07 * noise(field, 1.0, 50)), materials.GRAPHITED)] if coated else []
        return Piece(block.height, mask, 7.0, materials.SILICONE, patches)

    return build


def _tear(block: Relief, radius_mm: float) -> None:
    """A tear of 4 mm across the edge of the cavity."""
    from_edge = [clock(8.2 + 0.04 * (k % 2), radius_mm - 0.6 + 0.8 * k) for k in range(6)]
    block.line(from_edge, 0.32, -1.0)
    block.line([(x + 0.3, y + 0.2) for x, y in from_edge], 0.3, 0.25)
