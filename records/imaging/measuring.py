"""Distances and areas on a photograph that has a scale, each with its ±. Pure.

A photograph is flat: what is measured holds in the plane in which the scale lay, looked at squarely.
"""

from collections.abc import Sequence
from itertools import pairwise
from typing import TypeAlias

from uncertainties import UFloat, ufloat, umath

Point: TypeAlias = tuple[float, float]
Placed: TypeAlias = tuple[UFloat, UFloat]


def mm_per_px(ends: Sequence[Point], length_mm: UFloat | float, pointing_px: float) -> UFloat:
    """The scale of a picture: a known length over the pixels between its two ends.

    >>> from uncertainties import ufloat
    >>> print(mm_per_px([(100, 100), (2100, 100)], ufloat(40, 0.05), pointing_px=3))
    0.02000+/-0.00005
    """
    return length_mm / _along(_placed(ends, pointing_px))


def distance_mm(points: Sequence[Point], scale: UFloat, pointing_px: float) -> UFloat:
    """Along the line through the points."""
    return _along(_placed(points, pointing_px)) * scale


def area_mm2(points: Sequence[Point], scale: UFloat, pointing_px: float) -> UFloat:
    """Within the outline, by Gauss's formula for a polygon (the shoelace formula)."""
    placed = _placed(points, pointing_px)
    doubled = sum(x * below - across * y for (x, y), (across, below) in pairwise([*placed, placed[0]]))
    return (doubled if doubled.nominal_value > 0 else -doubled) / 2 * scale**2


def crosses_itself(points: Sequence[Point]) -> bool:
    """Whether two sides of the outline meet where they do not follow each other; it then has no area."""
    sides = list(pairwise([*points, points[0]]))
    count = len(sides)
    return any(_cross(*sides[i], *sides[j]) for i in range(count) for j in range(i + 2, count) if (j + 1) % count != i)


def _placed(points: Sequence[Point], pointing_px: float) -> list[Placed]:
    return [(ufloat(x, pointing_px), ufloat(y, pointing_px)) for x, y in points]


def _along(points: Sequence[Placed]) -> UFloat:
    return sum(umath.hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(points))


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    return _turn(a, b, c) * _turn(a, b, d) < 0 and _turn(c, d, a) * _turn(c, d, b) < 0
