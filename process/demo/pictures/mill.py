"""The tide-mill with its wheel over the waves: the reverse of 1624. Pure."""

from math import cos, pi, radians, sin

from process.demo.pictures.field import Point, smooth
from process.demo.pictures.relief import Relief, circle, spline

WHEEL: Point = (8.3, -3.4)
WHEEL_MM = 8.6
SEA_Y = -8.6
BOWL_MM = 21.9


def model(relief: Relief) -> None:
    """From the back to the front: sky, house, wheel, sea."""
    _sky(relief)
    _house(relief)
    _wheel(relief)
    _sea(relief)


def _sky(relief: Relief) -> None:
    for k in range(18):  # a sun behind the roof
        a = radians(10 + 160 * k / 17)
        reach = 10.6 if k % 2 else 8.2
        at = (9.4, 8.6)
        ray = [(at[0] + d * cos(a), at[1] + d * sin(a)) for d in (4.1, 0.72 * reach)]
        relief.line(ray, 0.42, 0.3)
    relief.dome(circle((9.4, 8.6), 3.1, count=40)[:-1], 0.5, 1.2, level_mm=0.2)
    for x, y in ((-15.0, 9.5), (-12.2, 11.6), (-17.2, 6.4)):  # gulls
        wings = [(x - 1.5, y + 0.5), (x - 0.6, y + 0.7), (x, y), (x + 0.6, y + 0.7), (x + 1.5, y + 0.5)]
        relief.line(spline(wings), 0.36, 0.34)


def _house(relief: Relief) -> None:
    relief.dome([(-14.5, SEA_Y - 1.5), (-14.5, 3.2), (4.2, 3.2), (4.2, SEA_Y - 1.5)], 0.75, 0.7, level_mm=0.35)
    relief.dome([(-16.2, 2.6), (-12.4, 13.4), (2.0, 13.4), (6.0, 2.6)], 0.95, 1.0, level_mm=0.75)
    for row in range(7):  # tiles
        y = 4.3 + 1.35 * row
        left, right = -15.6 + 0.52 * row, 5.4 - 0.52 * row
        relief.line([(left, y), (right, y)], 0.3, -0.22)
        count = int((right - left) / 1.25)
        for k in range(count):
            x = left + 0.6 + 1.25 * (k + 0.5 * (row % 2))
            relief.line([(x, y), (x, y - 1.1)], 0.2, -0.15)
    relief.dome([(-10.2, 11.2), (-10.2, 16.4), (-7.4, 16.4), (-7.4, 11.2)], 0.5, 0.6, level_mm=1.2)  # chimney
    relief.line(spline([(-8.8, 16.8), (-8.0, 18.2), (-9.4, 19.2), (-8.2, 20.6)]), 0.9, 0.28)  # its smoke
    for course in range(8):  # stones
        y = 1.7 - 1.45 * course
        relief.line([(-14.2, y), (3.9, y)], 0.2, -0.13)
        for k in range(8):
            x = -13.4 + 2.4 * k + 1.2 * (course % 2)
            relief.line([(x, y), (x, y - 1.4)], 0.18, -0.11)
    for x, y in ((-11.8, -0.6), (-6.6, -0.6), (-1.4, -0.6)):
        _window(relief, x, y)
    door = [(-9.2, -9.4), (-9.2, -5.2), *circle((-7.6, -5.2), 1.6, 180, 0, 16), (-6.0, -9.4)]
    relief.dome(door, -0.5, 0.4)
    relief.line(door, 0.5, 0.26)


def _window(relief: Relief, x: float, y: float) -> None:
    frame = [(x - 1.1, y - 1.5), (x - 1.1, y + 1.5), (x + 1.1, y + 1.5), (x + 1.1, y - 1.5)]
    relief.dome(frame, -0.42, 0.3)
    relief.line([*frame, frame[0]], 0.42, 0.26)
    relief.line([(x, y - 1.5), (x, y + 1.5)], 0.24, 0.3)
    relief.line([(x - 1.1, y), (x + 1.1, y)], 0.24, 0.3)


def _wheel(relief: Relief) -> None:
    cx, cy = WHEEL
    relief.dome(circle(WHEEL, WHEEL_MM + 0.4, count=60)[:-1], 0.12, 1.0, level_mm=0.75)
    for inner, width, height in ((WHEEL_MM, 0.85, 0.75), (WHEEL_MM - 1.9, 0.65, 0.6), (2.0, 0.6, 0.5)):
        relief.line(circle(WHEEL, inner), width, height)
    for k in range(8):
        a = 2 * pi * k / 8 + 0.2
        relief.line([(cx + 1.2 * cos(a), cy + 1.2 * sin(a)), (cx + 8.3 * cos(a), cy + 8.3 * sin(a))], 0.75, 0.6)
    for k in range(24):
        a = 2 * pi * k / 24
        relief.line([(cx + 6.9 * cos(a), cy + 6.9 * sin(a)), (cx + 9.7 * cos(a), cy + 9.7 * sin(a))], 0.5, 0.5)
    relief.beads([WHEEL], 1.25, 0.9)


def _sea(relief: Relief) -> None:
    """Bands of waves, kept inside a bowl."""
    shore = relief.height.copy()
    for row in range(6):
        y = SEA_Y - 0.6 - 2.05 * row
        crest: list[Point] = []
        for k in range(181):
            x = -23 + 46 * k / 180
            crest.append((x, y + 0.95 * abs(sin((x + 1.6 * row) * 0.62)) ** 0.7))
        relief.dome([*crest, (23, y - 3.0), (-23, y - 3.0)], 0.5, 0.9, level_mm=0.4 + 0.12 * row)
        relief.line(crest, 0.42, 0.42)
        relief.line([(x, v - 0.95) for x, v in crest], 0.26, -0.2)
    outside = smooth(relief.field.r, BOWL_MM - 0.1, BOWL_MM + 0.15)
    relief.height += outside * (shore - relief.height)
    relief.line(circle((0, 0), BOWL_MM, 203, 337, 90), 0.6, 0.5)
