"""Where the numbers stand: beside their shapes, inside the picture, not on one another."""

from collections.abc import Iterator, Sequence

Box = tuple[float, float, float, float]  # left, bottom, right, top
GAP = 1.5
ROUNDS = 6


def places(shapes: Sequence[Box], sizes: Sequence[tuple[float, float]], room: tuple[float, float]) -> list[Box]:
    """A box for each number; the first free place of those that lie nearest, else the nearest."""
    taken: list[Box] = []
    for shape, size in zip(shapes, sizes, strict=True):
        tried = [_inside(place, room) for place in _around(shape, size)]
        taken.append(next((place for place in tried if not any(_meet(place, other) for other in taken)), tried[0]))
    return taken


def _around(shape: Box, size: tuple[float, float]) -> Iterator[Box]:
    left, bottom, right, top = shape
    wide, tall = size
    for step in range(ROUNDS):
        off = GAP + step * tall
        for x, y in ((right + off, top), (left - wide - off, top), (right + off, bottom - tall),
                     (left - wide - off, bottom - tall), ((left + right - wide) / 2, top + off),
                     ((left + right - wide) / 2, bottom - tall - off)):  # fmt: skip
            yield x, y, x + wide, y + tall


def _inside(place: Box, room: tuple[float, float]) -> Box:
    left, bottom, right, top = place
    x = min(max(left, GAP), room[0] - (right - left) - GAP)
    y = min(max(bottom, GAP), room[1] - (top - bottom) - GAP)
    return x, y, x + right - left, y + top - bottom


def _meet(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
