"""Where the numbers stand: beside their shapes, inside the picture, not on one another; a line leads to what is far."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Protocol

Box = tuple[float, float, float, float]  # left, bottom, right, top
Line = tuple[float, float, float, float]  # from x, y to x, y
Point = tuple[float, float]
GAP = 0.15  # of the height of a number
ROUNDS = 9
ROOM = 1.5  # of the height of a number in a page: on a narrow screen it is drawn larger


class Numbered(Protocol):
    """A shape on a picture, in pixels from its upper left."""

    @property
    def kind(self) -> str: ...
    @property
    def label(self) -> str: ...
    @property
    def outline(self) -> Sequence[Point]: ...


@dataclass(frozen=True)
class Placed:
    """A shape with the middle of its number, and the path of the line that leads there where it stands apart."""

    shape: Numbered
    x: float
    y: float
    lead: str
    number_px: int


def placed(shapes: Sequence[Numbered], picture: tuple[int, int]) -> list[Placed]:
    """The shapes on a picture of that width and height, their numbers apart from one another."""
    number_px = max(max(picture) // 36, 1)
    tall = number_px * ROOM
    outlines = [[(x, picture[1] - y) for x, y in shape.outline] for shape in shapes]  # upwards, as on paper
    boxes = [
        _bounds(outline, number_px if shape.kind == "point" else 0)
        for outline, shape in zip(outlines, shapes, strict=True)
    ]
    sizes = [(tall * (0.3 + 0.5 * len(shape.label)), tall) for shape in shapes]
    found = places(boxes, sizes, (float(picture[0]), float(picture[1])))
    leads = leaders(found, outlines, boxes)
    return [
        Placed(
            shape,
            round((place[0] + place[2]) / 2, 1),
            round(picture[1] - (place[1] + place[3]) / 2, 1),
            _path(lead, picture[1]),
            number_px,
        )
        for shape, place, lead in zip(shapes, found, leads, strict=True)
    ]


def _bounds(outline: Sequence[Point], dot: float) -> Box:
    """The box around a shape; a point is drawn as a dot that covers more than itself."""
    across, down = [x for x, _ in outline], [y for _, y in outline]
    return min(across) - dot / 3, min(down) - dot / 3, max(across) + dot / 3, max(down) + dot / 3


def _path(line: Line | None, height: float) -> str:
    return f"M {line[0]:.1f} {height - line[1]:.1f} L {line[2]:.1f} {height - line[3]:.1f}" if line else ""


def places(shapes: Sequence[Box], sizes: Sequence[tuple[float, float]], room: tuple[float, float]) -> list[Box]:
    """A box for each number: the nearest place that is free of other numbers and, if there is one, of other shapes."""
    taken: list[Box] = []
    for index, (shape, size) in enumerate(zip(shapes, sizes, strict=True)):
        tried = [_inside(place, room, GAP * size[1]) for place in _around(shape, size)]
        others = [*shapes[:index], *shapes[index + 1 :]]
        free = [place for place in tried if not any(_meet(place, other) for other in taken)]
        clear = (place for place in free if not any(_meet(place, other) for other in [shape, *others]))
        taken.append(next(clear, (free or tried)[0]))
    return taken


def leaders(places: Sequence[Box], outlines: Sequence[Sequence[Point]], shapes: Sequence[Box]) -> list[Line | None]:
    """A line from each number to its shape, where it stands apart from it or near another shape as well."""
    found: list[Line | None] = []
    for index, (place, outline) in enumerate(zip(places, outlines, strict=True)):
        tall = place[3] - place[1]
        near = any(_meet(_wider(place, tall), other) for k, other in enumerate(shapes) if k != index)
        line = _line(place, outline)
        long = math.dist(line[:2], line[2:])
        found.append(line if long > (0.1 if near else 0.6) * tall else None)
    return found


def _line(place: Box, outline: Sequence[Point]) -> Line:
    left, bottom, right, top = place
    to = min(outline, key=lambda corner: math.dist(corner, ((left + right) / 2, (bottom + top) / 2)))
    return min(max(to[0], left), right), min(max(to[1], bottom), top), *to


def _wider(box: Box, by: float) -> Box:
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def _around(shape: Box, size: tuple[float, float]) -> Iterator[Box]:
    left, bottom, right, top = shape
    wide, tall = size
    for step in range(ROUNDS):
        off = GAP * tall + step * tall / 2
        for x, y in ((right + off, top), (left - wide - off, top), (right + off, bottom - tall),
                     (left - wide - off, bottom - tall), ((left + right - wide) / 2, top + off),
                     ((left + right - wide) / 2, bottom - tall - off)):  # fmt: skip
            yield x, y, x + wide, y + tall


def _inside(place: Box, room: tuple[float, float], gap: float) -> Box:
    left, bottom, right, top = place
    x = min(max(left, gap), room[0] - (right - left) - gap)
    y = min(max(bottom, gap), room[1] - (top - bottom) - gap)
    return x, y, x + right - left, y + top - bottom


def _meet(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
