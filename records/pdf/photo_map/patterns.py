"""The six patterns of the register's pictures in ink with a white edge: told apart in black and white."""

import math
from typing import Any

from records.pdf import theme

CELL = 5.0  # points from line to line
EDGES = ((theme.WHITE, 1.9), (theme.INK, 0.6))
DOTS = ((theme.WHITE, 1.7), (theme.INK, 1.1))
# Directions of the lines in degrees, counted upwards from the right.
LINES = {"loss": (45, 135), "opening": (90,), "shape": (0,), "surface": (45,)}
Box = tuple[float, float, float, float]  # left, bottom, right, top


def fill(canvas: Any, pattern: str, box: Box) -> None:
    """The pattern over the whole box; whoever asks has clipped the canvas to the shape. “plain” draws nothing."""
    if pattern == "deposit":
        _dots(canvas, box)
    for degrees in LINES.get(pattern, ()):
        _lines(canvas, box, math.radians(degrees))


def _lines(canvas: Any, box: Box, angle: float) -> None:
    left, bottom, right, top = box
    x, y = (left + right) / 2, (bottom + top) / 2
    reach = math.hypot(right - left, top - bottom) / 2 + CELL
    along, across = (math.cos(angle), math.sin(angle)), (-math.sin(angle), math.cos(angle))
    steps = math.ceil(reach / CELL)
    for colour, wide in EDGES:
        canvas.setStrokeColor(colour)
        canvas.setLineWidth(wide)
        for step in range(-steps, steps + 1):
            mx, my = x + step * CELL * across[0], y + step * CELL * across[1]
            canvas.line(mx - reach * along[0], my - reach * along[1], mx + reach * along[0], my + reach * along[1])


def _dots(canvas: Any, box: Box) -> None:
    left, bottom, right, top = box
    columns, rows = math.ceil((right - left) / CELL) + 1, math.ceil((top - bottom) / CELL) + 1
    for colour, radius in DOTS:
        canvas.setFillColor(colour)
        for row in range(rows):
            shift = CELL / 2 if row % 2 else 0.0
            for column in range(columns):
                canvas.circle(left + column * CELL + shift, bottom + row * CELL, radius, stroke=0, fill=1)
