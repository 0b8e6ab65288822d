"""The lightship medal seen on its edge at 3 o'clock: seam, solder, and the initials H.W. Pure."""

import numpy as np

from process.demo.pictures import blank, letters, materials, ship
from process.demo.pictures.field import Field, blur, noise, smooth
from process.demo.pictures.pieces import Piece
from process.demo.pictures.relief import Relief

THICKNESS_MM = 3.1


def lightship_edge(field: Field) -> Piece:
    """A band of the edge, bent away to left and right."""
    radius = ship.DIAMETER_MM / 2
    half = THICKNESS_MM / 2 + 0.05 * noise(field, 3.0, 81)
    inside = half - np.abs(field.y)
    relief = Relief(field, (np.sqrt(np.clip(radius**2 - field.x**2, 0, None)) - radius).astype(np.float32))
    share = np.clip(inside / 0.5, 0, 1)
    relief.height -= (1 - np.sqrt(np.clip(1 - (1 - share) ** 2, 0, 1))).astype(np.float32) * 0.6
    seam = [(-20 + 0.4 * k, 0.035 * np.sin(k * 0.37) + 0.02 * np.sin(k * 1.3)) for k in range(101)]
    relief.line(seam, 0.12, -0.16)
    blank.skin(relief, 0.16, 0.006, 83)
    for k in range(60):  # file marks left by the joiner
        x = -8 + 0.27 * k + 0.1 * np.sin(9 * k)
        relief.line([(x, 0.9 + 0.3 * np.sin(5 * k)), (x + 0.18, -0.9 + 0.3 * np.sin(7 * k))], 0.05, -0.008)
    mark = letters.straight(field, "H.W.", at=(2.4, 0.83), capital_mm=0.95)
    relief.height -= letters.raised(field, mark, 0.2, 0.03)
    solder = np.exp(-(((field.y - 0.05 * noise(field, 1.2, 84)) / 0.14) ** 2)).astype(np.float32)
    solder *= smooth(noise(field, 0.7, 85), -0.6, 0.2)
    mask = smooth(inside, -0.5 / field.px_per_mm, 0.5 / field.px_per_mm)
    return Piece(blur(relief.height, 0.5), mask, 2.0, materials.HISTORIC, [(0.85 * solder, materials.SOLDER)])
