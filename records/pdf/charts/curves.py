"""A series as pieces of line between its gaps, and the hatch beneath a calculated one."""

from bisect import bisect_left, bisect_right
from collections.abc import Callable
from datetime import datetime
from itertools import pairwise

from records.pdf.charts.model import Series
from records.pdf.charts.shapes import Place

HATCH_GAP, HATCH_STEP = 9.0, 1.5


def pieces(series: Series) -> list[list[tuple[datetime, float]]]:
    """The stretches between gaps; a step keeps its value until the next entry or the gap."""
    answer: list[list[tuple[datetime, float]]] = [[]]
    for at, value in series.points:
        current = answer[-1]
        if series.step and current:
            current.append((at, current[-1][1]))
        if value is None:
            answer.append([])
        else:
            current.append((at, value))
    return [piece for piece in answer if piece]


def gaps(series: Series) -> list[tuple[datetime, datetime]]:
    """From the end of one stretch to the start of the next."""
    return [(before[-1][0], after[0][0]) for before, after in pairwise(pieces(series))]


def _height_at(places: list[Place]) -> Callable[[float], float | None]:
    edges = [x for x, _ in places]

    def height(x: float) -> float | None:
        right = bisect_right(edges, x)
        if not 0 < right < len(places):
            return None
        (x0, y0), (x1, y1) = places[right - 1], places[right]
        return y0 + (y1 - y0) * (x - x0) / (x1 - x0)

    return height


def hatch(places: list[Place], base: float) -> list[tuple[Place, Place]]:
    """Diagonal strokes between a curve and the base line."""
    left, right = places[0][0], places[-1][0]
    count = int((right - left) / HATCH_STEP)
    height = _height_at(places)
    columns = [
        (x, y) for x, y in ((left + i * HATCH_STEP, height(left + i * HATCH_STEP)) for i in range(count + 1)) if y
    ]
    depth = max((base - y for _, y in columns), default=0.0)
    edges = [x for x, _ in columns]
    strokes: list[tuple[Place, Place]] = []
    offset = left + HATCH_GAP / 2
    while offset < right + depth:
        within = slice(bisect_left(edges, offset - depth), bisect_right(edges, offset))
        strokes += _stroke(columns[within], base, offset)
        offset += HATCH_GAP
    return strokes


def _stroke(columns: list[Place], base: float, offset: float) -> list[tuple[Place, Place]]:
    """The parts of the diagonal through (offset, base), going up to the left, that lie under the curve."""
    answer: list[tuple[Place, Place]] = []
    run: list[Place] = []
    for x, top in columns:
        y = base - (offset - x)
        if top <= y <= base:
            run.append((x, y))
        elif run:
            answer.append((run[0], run[-1]))
            run = []
    if run:
        answer.append((run[0], run[-1]))
    return [stroke for stroke in answer if stroke[1][0] - stroke[0][0] > HATCH_STEP]
