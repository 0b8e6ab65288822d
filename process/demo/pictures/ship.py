"""The lightship of Sallowness under her lantern: the medal of 1702, known from the electrotype R.1889.7.

Pure.
"""

from math import cos, pi, radians, sin

from process.demo.pictures import blank, letters
from process.demo.pictures.field import Field, Plane, Point, smooth
from process.demo.pictures.relief import Relief, circle, spline

DIAMETER_MM = 44.82
OBVERSE_LEGEND = "THE·SALLOWNESS·LIGHTSHIP·LAUNCHED·MDCCII"
REVERSE_LEGEND = "A·LIGHT·FOR·ALL·WHO·PASS"
MARK = "COPY OF COPY 2026"
BOWL_MM = 16.4
HULL: list[Point] = [
    (-12.6, -1.2), (-12.0, -2.8), (-10.6, -5.6), (-8.6, -7.4), (6.6, -7.4), (9.4, -5.6),
    (11.6, -2.2), (13.4, 0.4),
    (9.6, -1.2), (3.0, -2.2), (-5.0, -2.2), (-9.8, -1.0),
]  # fmt: skip


def obverse(field: Field, radius: Plane) -> Relief:
    """The ship at her moorings, the lantern lit."""
    relief = _ground(field, radius, OBVERSE_LEGEND, 300)
    _rays(relief)
    _rigging(relief)
    _hull(relief)
    _lantern(relief, (0.0, 9.6))
    _sea(relief)
    return relief


def reverse(field: Field, radius: Plane) -> Relief:
    """An anchor within a cable."""
    relief = _ground(field, radius, REVERSE_LEGEND, 230)
    cable = [(14.8 * cos(a), 14.8 * sin(a)) for a in (2 * pi * k / 72 for k in range(72))]
    relief.line([*cable, cable[0]], 1.1, 0.4)
    for x, y in cable:
        relief.line([(x * 0.965, y * 0.965), (x * 1.03 - y * 0.03, y * 1.03 + x * 0.03)], 0.3, -0.2)
    relief.line([(0, 7.0), (0, -9.0)], 1.9, 1.1)
    relief.line([(-5.2, 4.8), (5.2, 4.8)], 1.5, 0.9)
    relief.line(circle((0, 9.0), 2.0), 0.9, 0.9)
    relief.line(spline([(-8.4, -3.2), (-6.4, -7.4), (0, -10.2), (6.4, -7.4), (8.4, -3.2)]), 1.7, 1.1)
    for side in (-1, 1):
        relief.dome([(side * 10.4, -4.0), (side * 8.6, 0.2), (side * 6.4, -4.8)], 0.7, 0.7)
    return relief


def _ground(field: Field, radius: Plane, legend: str, spread_deg: float) -> Relief:
    relief = Relief(field)
    blank.rim(relief, radius, 1.1, 0.6)
    text = letters.around(field, legend, radius_mm=18.75, capital_mm=2.15, spread_deg=spread_deg)
    relief.height += letters.raised(field, text, 0.42, 0.06)
    return relief


def _rays(relief: Relief) -> None:
    for k in range(24):
        a = radians(15 * k)
        reach = 6.6 if k % 2 else 5.0
        relief.line([(2.4 * cos(a), 9.6 + 2.4 * sin(a)), (reach * cos(a), 9.6 + reach * sin(a))], 0.3, 0.2)


def _rigging(relief: Relief) -> None:
    for foot, top in ((0.0, 12.8), (-8.4, 6.4), (8.2, 7.0)):
        relief.line([(foot, -2.0), (foot, top)], 0.8, 0.62)
    for start, end in (
        ((0, 11.6), (-8.4, 6.2)), ((0, 11.6), (8.2, 6.8)), ((-8.4, 6.2), (-12.2, -1.4)),
        ((8.2, 6.8), (13.0, 0.2)), ((0, 8), (-5.4, -2)), ((0, 8), (5.4, -2)), ((0, 8), (-3.2, -2)),
        ((0, 8), (3.2, -2)),
    ):  # fmt: skip
        relief.line([start, end], 0.22, 0.26)
    for step in range(1, 5):  # ratlines
        share = 1 - step / 5.5
        relief.line([(-5.4 * share, 8 - 10 * share), (5.4 * share, 8 - 10 * share)], 0.18, 0.16)
    relief.dome(
        spline([(8.2, 7.0), (10.2, 6.4), (12.2, 7.0), (11.8, 5.6), (10.0, 5.0), (8.2, 5.4)], closed=True),
        0.4,
        0.6,
    )
    relief.dome([(-8.4, 6.4), (-11.4, 5.8), (-8.4, 5.0)], 0.36, 0.5)
    relief.line([(11.8, -0.4), (15.6, 2.6)], 0.5, 0.5)


def _hull(relief: Relief) -> None:
    relief.dome(spline(HULL, closed=True), 1.0, 1.8, level_mm=0.5)
    for drop in (0.0, 1.15, 2.3, 3.4):
        strake = [
            (-11.6 + 0.55 * drop, -1.9 - drop),
            (-5, -3.1 - drop),
            (3, -3.1 - drop),
            (11.4 - 0.6 * drop, -1.6 - drop),
        ]
        relief.line(spline(strake), 0.26, -0.17)
    relief.line(spline([(-12.4, -1.1), (-9.8, -0.9), (-5, -2.1), (3, -2.1), (9.6, -1.1), (13.2, 0.5)]), 0.55, 0.34)
    for k in range(6):
        relief.bump((-7.6 + 2.8 * k, -3.75), (0.42, 0.36), -0.3)


def _lantern(relief: Relief, at: Point) -> None:
    relief.beads([at], 1.9, 1.0)
    for share in (-0.5, 0.0, 0.5):
        relief.line([(at[0] + 1.7 * share, at[1] - 1.7), (at[0] + 1.7 * share, at[1] + 1.7)], 0.24, -0.22)
    relief.line([(at[0] - 1.5, at[1] - 1.9), (at[0] + 1.5, at[1] - 1.9)], 0.5, 0.5)
    relief.dome([(at[0] - 1.5, at[1] + 1.7), (at[0], at[1] + 3.0), (at[0] + 1.5, at[1] + 1.7)], 0.5, 0.4)


def _sea(relief: Relief) -> None:
    shore = relief.height.copy()
    for row in range(5):
        y = -6.6 - 1.75 * row
        crest = [
            (-17 + 34 * k / 140, y + 0.8 * abs(sin((-17 + 34 * k / 140 + 1.3 * row) * 0.8)) ** 0.7) for k in range(141)
        ]
        relief.dome([*crest, (17, y - 4.0), (-17, y - 4.0)], 0.42, 0.7, level_mm=0.3 + 0.16 * row)
        relief.line(crest, 0.34, 0.34)
        relief.line([(x, v - 0.75) for x, v in crest], 0.2, -0.16)
    outside = smooth(relief.field.r, BOWL_MM - 0.1, BOWL_MM + 0.1)
    relief.height += outside * (shore - relief.height)


def marked_reverse(field: Field, radius: Plane) -> Relief:
    """The reverse of the copy of a copy, with its mark below the anchor."""
    relief = reverse(field, radius)
    text = letters.around(
        field, MARK, radius_mm=18.75, capital_mm=1.8, middle_h=6, style="sans", feet_out=True, spread_deg=88
    )
    relief.height += letters.raised(field, text, 0.3, 0.045)
    return relief
