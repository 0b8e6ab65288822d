"""The ten-groat piece of the Free Port of Sallowness, 1571: struck, worn, not round. Pure."""

from math import cos, pi, sin

from process.demo.pictures import letters
from process.demo.pictures.field import Field, Plane
from process.demo.pictures.relief import Relief, circle, spline

DIAMETER_MM = 31.20
THICKNESS_MM = 2.01
OBVERSE_LEGEND = "+LIBER·PORTVS·SALOVNESII·1571"
REVERSE_LEGEND = "+DECEM·GROTI·MARE·NOSTRVM·DAT"
GILT_LETTERS = (3, 9, 15)  # places in the obverse legend where gold is left
COPY_MARK = "COPY"


def obverse(field: Field, radius: Plane, mark: str = "") -> Relief:
    """A sea-gate with two towers over waves."""
    relief = _ground(field, OBVERSE_LEGEND)
    for x in (-4.6, 0.0, 4.6):
        tall = 5.4 if x == 0 else 3.4
        relief.dome([(x - 1.6, -3.4), (x - 1.6, tall), (x + 1.6, tall), (x + 1.6, -3.4)], 0.34, 0.4, level_mm=0.2)
        for k in (-1, 0, 1):
            relief.dome(_box(x + 1.15 * k, tall + 0.35, 0.38, 0.5), 0.26, 0.2, level_mm=0.25)
        relief.line([(x - 1.5, tall - 1.0), (x + 1.5, tall - 1.0)], 0.24, 0.16)
        relief.bump((x, tall - 2.3), (0.34, 0.62), -0.3)
    relief.dome([(-1.0, -3.4), (-1.0, -1.2), *circle((0, -1.2), 1.0, 180, 0, 12), (1.0, -3.4)], -0.4, 0.3)
    for row in range(3):
        y = -4.0 - 1.25 * row
        half = 8.4 - 1.5 * row
        wave = [(-half + 2 * half * k / 60, y + 0.36 * sin(2.2 * (-half + 2 * half * k / 60) + row)) for k in range(61)]
        relief.line(wave, 0.42, 0.36)
    if mark:
        text = letters.straight(field, mark, at=(0.0, 8.15), capital_mm=2.0, style="sans")
        relief.height += letters.raised(field, text, 0.30, 0.04)
    return relief


def reverse(field: Field, radius: Plane) -> Relief:
    """A long cross, an anchor in each quarter."""
    relief = _ground(field, REVERSE_LEGEND)
    for turn in range(4):
        a = pi / 2 * turn
        arm = [(0.0, 0.0), (9.2, 0.0)]
        relief.line([_turned(p, a) for p in arm], 0.85, 0.34)
        relief.line([_turned(p, a) for p in ((9.0, -1.3), (9.0, 1.3))], 0.8, 0.32)
        b = a + pi / 4
        relief.line([_turned(p, b) for p in ((2.6, 0), (7.2, 0))], 0.5, 0.3)
        relief.line(
            [_turned(p, b) for p in spline([(5.4, -1.9), (7.0, -1.4), (7.6, 0), (7.0, 1.4), (5.4, 1.9)])],
            0.5,
            0.3,
        )
        relief.line([_turned(p, b) for p in ((3.6, -1.1), (3.6, 1.1))], 0.4, 0.26)
    relief.beads([(0.0, 0.0)], 1.1, 0.4)
    return relief


def gilding(field: Field) -> Plane:
    """Where gold is left: in three letters of the obverse legend."""
    thinned = "".join(c if k in GILT_LETTERS else " " for k, c in enumerate(OBVERSE_LEGEND))
    return _legend(field, OBVERSE_LEGEND, keep=thinned)


def _ground(field: Field, legend: str) -> Relief:
    relief = Relief(field)
    relief.beads(circle((0, 0), 14.35, count=92)[:-1], 0.34, 0.24)
    relief.beads(circle((0, 0), 10.15, count=66)[:-1], 0.28, 0.2)
    relief.height += letters.raised(field, _legend(field, legend), 0.34, 0.06)
    return relief


def _legend(field: Field, text: str, keep: str | None = None) -> Plane:
    return letters.around(field, text, radius_mm=12.25, capital_mm=2.05, spread_deg=344, only=keep)


def _box(x: float, y: float, half_width: float, half_height: float) -> list[tuple[float, float]]:
    return [
        (x - half_width, y - half_height), (x - half_width, y + half_height),
        (x + half_width, y + half_height), (x + half_width, y - half_height),
    ]  # fmt: skip


def _turned(point: tuple[float, float], angle: float) -> tuple[float, float]:
    x, y = point
    return x * cos(angle) - y * sin(angle), x * sin(angle) + y * cos(angle)
