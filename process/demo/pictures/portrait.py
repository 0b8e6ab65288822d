"""Maud Ferrigan, mistress of the tide-mill, to the right, in coif and ruff: the obverse of 1624. Pure."""

from math import cos, pi, radians, sin

from process.demo.pictures.field import Point, blur
from process.demo.pictures.relief import Relief, circle, fill, spline

FACE: list[Point] = [
    (3.6, 14.6), (5.7, 13.2), (6.75, 11.4), (7.15, 9.6), (7.2, 8.4), (6.7, 7.3), (7.35, 6.0), (8.35, 4.4),
    (9.25, 3.1), (9.3, 2.4), (8.7, 1.85), (7.75, 1.6), (7.45, 1.1), (7.7, 0.45), (7.98, -0.05), (7.85, -0.42),
    (7.42, -0.66), (7.75, -0.98), (7.72, -1.5), (7.1, -2.05), (7.05, -2.6), (7.35, -3.3),
    (7.2, -4.2),
    (6.3, -4.85), (4.9, -4.95), (3.4, -5.3), (2.6, -6.6), (2.4, -9.0), (-4.5, -9.0), (-5.5, -3.0),
    (-4.0, 6.0),
    (-1.0, 13.0),
]  # fmt: skip
COIF: list[Point] = [
    (4.6, 14.3), (3.3, 16.2), (0.2, 17.6), (-3.6, 17.4), (-7.2, 15.2), (-9.4, 11.6), (-9.9, 7.6), (-9.0, 3.6),
    (-7.4, 0.4), (-5.6, -2.2), (-2.9, -3.2), (-1.6, -1.6), (-1.0, 1.0), (0.1, 3.4), (0.9, 5.8), (1.5, 8.6),
    (2.9, 11.8),
]  # fmt: skip
COIF_EDGE: list[Point] = [
    (4.6, 14.3), (2.9, 11.8), (1.5, 8.6), (0.9, 5.8), (0.1, 3.4), (-1.0, 1.0), (-1.6, -1.6), (-2.9, -3.2),
]  # fmt: skip
BUST: list[Point] = [
    (-5.0, -6.5), (-9.3, -8.4), (-12.6, -11.4), (-14.4, -15.0), (-12.6, -17.6), (-7.0, -20.6), (0.5, -21.9),
    (6.6, -20.4), (10.6, -17.4), (11.9, -14.2), (10.4, -11.0), (7.4, -8.5), (4.2, -6.6),
]  # fmt: skip


def model(relief: Relief) -> None:
    """Lay the portrait on the field, from the farthest part to the nearest."""
    relief = relief.enlarged(1.13, (1.2, 1.4))
    _bust(relief)
    _head(relief)
    _features(relief)
    _ear_and_hair(relief)
    _coif(relief)
    _ruff(relief)


def _bust(relief: Relief) -> None:
    relief.dome(spline(BUST, closed=True), 1.35, 3.2, level_mm=0.15)
    bare = relief.height.copy()
    for k in range(7):  # the folds of the sleeve, then the buttoned front
        x = -13.0 + 1.75 * k
        relief.line(spline([(x + 2.4, -9.4), (x + 0.5, -13.5), (x + 0.4, -19.2)]), 0.75, -0.24)
    front = spline([(3.2, -9.4), (6.4, -13.0), (7.3, -20.2)])
    relief.line(front, 1.7, 0.32)
    relief.beads([front[k] for k in range(4, len(front), 4)], 0.52, 0.3)
    for k in range(4):
        x = 8.6 + k * 0.9
        relief.line(spline([(x - 1.6, -11.2 - k * 0.5), (x - 0.2, -15.0), (x - 0.9, -19.6 + k * 0.4)]), 0.5, -0.16)
    cloth = blur(fill(relief.field, spline(BUST, closed=True)), 0.1 * relief.field.px_per_mm)
    relief.height[:] = bare + cloth * (relief.height - bare)  # nothing of it beyond the outline


def _head(relief: Relief) -> None:
    relief.dome(spline(FACE, closed=True), 1.75, 3.6, level_mm=0.25)
    relief.bump((3.4, 1.6), (2.3, 2.1), 0.30)  # cheek
    relief.bump((3.9, -2.6), (2.6, 1.5), 0.16, -20)  # jowl
    relief.bump((6.3, -3.5), (0.95, 0.9), 0.20)  # chin
    relief.bump((6.1, 10.4), (1.6, 2.4), 0.12)  # forehead
    relief.bump((2.6, -5.4), (2.2, 1.0), -0.34, -12)  # under the jaw
    relief.bump((4.7, -0.2), (1.0, 1.5), -0.10, 25)  # hollow beside the mouth


def _features(relief: Relief) -> None:
    relief.bump((4.75, 6.75), (1.5, 0.95), -0.40, -6)  # socket
    relief.bump((4.85, 6.45), (0.95, 0.68), 0.40)  # ball of the eye
    relief.line(spline([(3.5, 6.3), (4.3, 7.05), (5.3, 7.1), (5.95, 6.6)]), 0.28, 0.17)  # lids
    relief.line(spline([(3.6, 6.15), (4.5, 5.72), (5.4, 5.78), (5.9, 6.2)]), 0.24, 0.13)
    relief.line(spline([(3.5, 7.5), (4.5, 8.15), (5.6, 8.15), (6.6, 7.8)]), 0.42, 0.16)  # brow
    relief.bump((5.25, 6.45), (0.22, 0.22), -0.14)
    relief.line(spline([(3.5, 5.3), (4.4, 4.85), (5.5, 5.0)]), 0.5, -0.06)  # under the eye
    relief.bump((7.75, 2.55), (0.85, 0.72), 0.26)  # wing of the nose
    relief.line(spline([(6.85, 3.4), (6.72, 2.6), (7.0, 2.0)]), 0.3, -0.18)
    relief.bump((8.0, 1.95), (0.36, 0.2), -0.24)  # nostril
    relief.line(spline([(6.7, 2.2), (6.05, 1.0), (5.75, -0.4)]), 0.4, -0.12)  # fold of the cheek
    relief.line(spline([(7.5, -0.62), (6.8, -0.6), (6.1, -0.78)]), 0.24, -0.26)  # mouth
    relief.bump((7.2, -0.18), (0.75, 0.32), 0.16, 6)
    relief.bump((7.15, -1.12), (0.7, 0.34), 0.18, -4)
    relief.bump((6.7, -2.05), (0.7, 0.34), -0.16)


def _ear_and_hair(relief: Relief) -> None:
    for k in range(7):  # hair drawn back under the coif
        lift = 0.62 * k
        strand = [
            (5.6 - 0.42 * k, 12.6 - 0.15 * k),
            (4.2 - 0.35 * k, 11.2 - lift),
            (2.6 - 0.3 * k, 8.4 - lift),
        ]
        relief.line(spline(strand), 0.5, 0.2)
        relief.line(spline([(x + 0.3, y - 0.25) for x, y in strand]), 0.2, -0.14)
    relief.bump((0.95, 2.2), (0.7, 1.15), 0.30, 15)  # lobe below the linen
    relief.beads([(1.1, 0.35)], 0.5, 0.5)


def _coif(relief: Relief) -> None:
    relief.dome(spline(COIF, closed=True), 1.15, 3.4, level_mm=1.2)
    edge = spline(COIF_EDGE)
    relief.line(edge, 1.0, 0.34)
    relief.line([(x - 0.95, y + 0.1) for x, y in edge], 0.3, -0.2)
    relief.beads([(x + 0.42, y - 0.1) for x, y in edge[::4]], 0.40, 0.26)
    for k in range(1, 6):  # seams of the linen running to the knot behind
        bow = [
            (2.4 - 1.15 * k, 15.9 - 0.2 * k),
            (-3.0 - 0.75 * k, 12.6 - 1.3 * k),
            (-5.4 - 0.2 * k, 3.6 - 0.6 * k),
        ]
        relief.line(spline(bow), 0.34, -0.17)
    for row in range(4):
        for k in range(5):
            at = (-0.4 - 1.55 * k + 0.3 * row, 13.6 - 2.75 * row - 0.55 * k)
            relief.beads([(at[0] + 0.5 * cos(a), at[1] + 0.5 * sin(a)) for a in _fifths()], 0.27, 0.17)
    relief.dome(spline(circle((-8.3, 2.2), 2.35, count=10)[:-1], closed=True), 0.75, 1.2, level_mm=0.9)
    for turn in range(0, 360, 40):
        a = radians(turn)
        relief.line([(-8.3 + 0.6 * cos(a), 2.2 + 0.6 * sin(a)), (-8.3 + 2.2 * cos(a), 2.2 + 2.2 * sin(a))], 0.3, -0.22)


def _fifths() -> list[float]:
    return [2 * pi * k / 5 for k in range(5)]


def _ruff(relief: Relief) -> None:
    """A wheel of pleats seen from the side: an oval tilted up behind."""
    tilt, centre = radians(-9), (-0.4, -6.9)

    def turned(u: float, v: float) -> Point:
        return centre[0] + u * cos(tilt) - v * sin(tilt), centre[1] + u * sin(tilt) + v * cos(tilt)

    outline = [turned(10.4 * cos(a), 3.15 * sin(a)) for a in (2 * pi * k / 60 for k in range(60))]
    relief.dome(outline, 0.95, 1.5, level_mm=1.55)
    for k in range(44):
        a = 2 * pi * k / 44
        inner, outer = turned(5.4 * cos(a), 0.75 * sin(a)), turned(10.1 * cos(a), 3.0 * sin(a))
        relief.line([inner, outer], 0.34, -0.34)
        relief.beads([turned(10.0 * cos(a + 0.07), 2.95 * sin(a + 0.07))], 0.42, 0.24)
    relief.bump(turned(0, 0.3), (4.6, 0.7), -0.45, -9)
