"""The engraved plate soldered on the back rim of the core electrotype. Pure."""

import numpy as np

from process.demo.pictures import blank, letters, materials
from process.demo.pictures.field import Field, blur, noise, smooth
from process.demo.pictures.pieces import Piece
from process.demo.pictures.relief import Relief

WIDE_MM, HIGH_MM = 34.0, 8.0
CAPITAL_MM, DEPTH_MM = 3.0, 0.4  # as the demo says of the mark
MARK = "OVM 2026 COPY"


def back_rim(field: Field) -> Piece:
    """A stretch of the copper rim below the chin, with the plate and the fillet of solder round it."""
    relief = Relief(field, (-((field.y / 15.0) ** 2) * 3.0).astype(np.float32))
    blank.skin(relief, 0.5, 0.02, 151)
    out = np.maximum(np.abs(field.x) - WIDE_MM / 2, np.abs(field.y) - HIGH_MM / 2) + 0.08 * noise(field, 2.0, 152)
    plate = 1 - smooth(out, -0.25, 0.15)
    relief.height = relief.height * (1 - plate) + 0.9 * plate
    text = letters.straight(field, MARK, at=(0.0, 0.0), capital_mm=CAPITAL_MM, style="sans")
    relief.height -= letters.raised(field, text, DEPTH_MM, 0.06)
    solder = (np.exp(-(((out - 0.3) / 0.45) ** 2)) * (0.7 + 0.3 * noise(field, 1.0, 153))).astype(np.float32)
    relief.height += 0.25 * solder
    inside = 13.0 + 0.15 * noise(field, 6.0, 154) - np.abs(field.y)
    mask = smooth(inside, -0.5 / field.px_per_mm, 0.5 / field.px_per_mm)
    return Piece(
        blur(relief.height, 0.6), mask, 3.0, materials.COPY_BRONZE, [(np.clip(0.8 * solder, 0, 1), materials.SOLDER)]
    )
