"""Modelling in relief: shapes laid on, domes blown up, lines drawn, as a modeller in wax would. Pure.

Heights are in millimetres above the plane of the field of the medal.
"""

from collections.abc import Sequence
from math import cos, pi, radians, sin

import numpy as np
from PIL import Image, ImageDraw

from process.demo.pictures.field import Field, Plane, Point, blur, smooth


class Relief:
    """A height field that grows by layers."""

    def __init__(self, field: Field, height: Plane | None = None) -> None:
        self.field = field
        self.height = field.flat() if height is None else height

    def enlarged(self, factor: float, centre: Point) -> "Relief":
        """The same surface at another scale: what is drawn about (0, 0) lands larger, at `centre`."""
        x, y = self.field.centre
        there = ((x - centre[0]) / factor, (y - centre[1]) / factor)
        field = Field(self.field.width, self.field.height, self.field.px_per_mm * factor, there)
        return Relief(field, self.height)

    def dome(
        self, points: Sequence[Point], height_mm: float, round_mm: float, *, level_mm: float | None = None
    ) -> None:
        """Lay a closed shape on, rounded at its edge; at an absolute level if one is given, else added."""
        part, where = self.field.window(points, 3 * round_mm)
        mask = fill(part, points)
        body = swell(mask, round_mm * part.px_per_mm) * np.float32(height_mm)
        edge = blur(mask, 0.09 * part.px_per_mm)
        under = self.height[where]
        self.height[where] = under + body if level_mm is None else under + edge * (level_mm + body - under)

    def line(self, points: Sequence[Point], width_mm: float, height_mm: float) -> None:
        """Draw a rounded ridge (or, with a negative height, a groove) along a polyline."""
        part, where = self.field.window(points, 3 * width_mm)
        ridge = blur(stroke(part, points, width_mm), 0.28 * width_mm * part.px_per_mm)
        self.height[where] += ridge * np.float32(height_mm)

    def bump(self, at: Point, size: Point, height_mm: float, turn_deg: float = 0.0) -> None:
        """Press a soft elliptical swelling out of the surface (or into it)."""
        reach = 2.8 * max(size)
        part, where = self.field.window([(at[0] - reach, at[1] - reach), (at[0] + reach, at[1] + reach)], 0)
        dx, dy = part.x - at[0], part.y - at[1]
        c, s = cos(radians(turn_deg)), sin(radians(turn_deg))
        squared = ((dx * c + dy * s) / size[0]) ** 2 + ((dy * c - dx * s) / size[1]) ** 2
        self.height[where] += np.float32(height_mm) * np.exp(-squared)

    def beads(self, centres: Sequence[Point], radius_mm: float, height_mm: float) -> None:
        """Set a row of half-round beads."""
        for x, y in centres:
            corners = [(x - radius_mm, y - radius_mm), (x + radius_mm, y + radius_mm)]
            part, where = self.field.window(corners, 0.1)
            squared = ((part.x - x) ** 2 + (part.y - y) ** 2) / radius_mm**2
            bead = np.sqrt(np.clip(1 - squared, 0, 1)) * np.float32(height_mm)
            self.height[where] = np.maximum(self.height[where], self.height[where] + bead)


def spline(points: Sequence[Point], *, closed: bool = False, steps: int = 10) -> list[Point]:
    """A smooth curve through the points (centripetal enough for our purpose: Catmull–Rom)."""
    p = np.asarray(points, dtype=float)
    p = np.vstack([p[-1], p, p[0], p[1]]) if closed else np.vstack([p[0], p, p[-1]])
    t = np.linspace(0, 1, steps, endpoint=False)[:, None]
    curve = [
        0.5
        * (
            2 * p[i]
            + (p[i + 1] - p[i - 1]) * t
            + (2 * p[i - 1] - 5 * p[i] + 4 * p[i + 1] - p[i + 2]) * t**2
            + (3 * p[i] - p[i - 1] - 3 * p[i + 1] + p[i + 2]) * t**3
        )
        for i in range(1, len(p) - 2)
    ]
    dense = [(float(x), float(y)) for x, y in np.vstack(curve)]
    return dense if closed else [*dense, (float(p[-1][0]), float(p[-1][1]))]


def circle(centre: Point, radius: float, start_deg: float = 0, end_deg: float = 360, count: int = 72) -> list[Point]:
    """Points along an arc, counter-clockwise from 3 o'clock."""
    angles = [radians(start_deg + (end_deg - start_deg) * k / count) for k in range(count + 1)]
    return [(centre[0] + radius * cos(a), centre[1] + radius * sin(a)) for a in angles]


def clock(hour: float, radius: float) -> Point:
    """A place named by the hand of a clock."""
    angle = pi / 2 - hour * pi / 6
    return radius * cos(angle), radius * sin(angle)


def fill(field: Field, points: Sequence[Point]) -> Plane:
    """1 inside the closed shape, 0 outside, with a soft edge."""
    image = Image.new("L", (field.width * 2, field.height * 2), 0)
    ImageDraw.Draw(image).polygon([(2 * x + 0.5, 2 * y + 0.5) for x, y in field.to_px(points)], fill=255)
    return np.asarray(image.reduce(2), dtype=np.float32) / 255


def stroke(field: Field, points: Sequence[Point], width_mm: float) -> Plane:
    """1 on the line, 0 beside it."""
    image = Image.new("L", (field.width * 2, field.height * 2), 0)
    width = max(1, round(width_mm * field.px_per_mm * 2))
    line = [(2 * x + 0.5, 2 * y + 0.5) for x, y in field.to_px(points)]
    ImageDraw.Draw(image).line(line, fill=255, width=width, joint="curve")
    return np.asarray(image.reduce(2), dtype=np.float32) / 255


def swell(mask: Plane, round_px: float) -> Plane:
    """Blow a flat shape up to a cushion that is full about `round_px` inside its edge."""
    body = np.zeros_like(mask)
    for share, weight in ((1.0, 0.5), (0.45, 0.3), (0.18, 0.2)):
        inner = np.clip(2 * blur(mask, share * round_px) - 1, 0, 1)
        body += np.float32(weight) * np.sqrt(inner)
    return body * smooth(mask, 0.0, 1.0)
