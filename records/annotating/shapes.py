"""Shapes on a picture: how many points each has, its path, the box around it, and the place of its number."""

from collections.abc import Sequence

Points = Sequence[Sequence[float]]
Box = tuple[float, float, float, float]  # left, top, width, height

LEAST = {"point": 1, "rectangle": 2, "polygon": 3, "line": 2}
MOST = {"point": 1, "rectangle": 2, "polygon": 400, "line": 400}


def corners(shape: str, points: Points) -> list[tuple[float, float]]:
    """The points along the outline; of a rectangle all four."""
    if shape != "rectangle":
        return [(x, y) for x, y in points]
    left, top, width, height = box(points)
    right, bottom = left + width, top + height
    return [(left, top), (right, top), (right, bottom), (left, bottom)]


def box(points: Points) -> Box:
    across, down = [p[0] for p in points], [p[1] for p in points]
    return min(across), min(down), max(across) - min(across), max(down) - min(down)


def path(shape: str, points: Points) -> str:
    """The outline as the path of an SVG; a point is a line of no length with round ends."""
    way = " L ".join(f"{x:.1f} {y:.1f}" for x, y in corners(shape, points))
    if shape == "point":
        return f"M {way} h 0"
    return f"M {way}{'' if shape == 'line' else ' Z'}"


def around(points: Points, size: tuple[int, int], share: float = 0.12) -> Box:
    """The box with room about it, inside the picture: what a detail shows."""
    left, top, width, height = box(points)
    room = max(share * max(size), 0.35 * max(width, height))
    x, y = max(left - room, 0), max(top - room, 0)
    right, bottom = min(left + width + room, size[0]), min(top + height + room, size[1])
    return x, y, right - x, bottom - y
