"""Laying one picture over another by points that are the same on both.

Two points give a shift, a turn and a scale (the similarity w = a·z + b in the complex plane); three give every
straight map (affine), solved by Cramer's rule. Textbook plane geometry.
"""

from records.annotating.shapes import Points

Matrix = tuple[float, float, float, float, float, float]  # as SVG's matrix(a b c d e f): x' = a·x + c·y + e


class NotAligned(ValueError):
    """The points do not settle how one picture lies on the other."""


def aligned(before: Points, after: Points) -> Matrix:
    """The map that lays `before` on `after`; both hold the same two or three points in the same order."""
    if len(before) != len(after):
        raise NotAligned(f"{len(before)} points on the earlier picture, {len(after)} on the later: set the same ones.")
    if len(before) == 2:
        return _by_two(before, after)
    if len(before) == 3:
        return _by_three(before, after)
    raise NotAligned("Two or three points settle it.")


def _by_two(before: Points, after: Points) -> Matrix:
    z1, z2 = (complex(*point) for point in before)
    w1, w2 = (complex(*point) for point in after)
    if z1 == z2:
        raise NotAligned("Both points lie on one another.")
    a = (w2 - w1) / (z2 - z1)
    b = w1 - a * z1
    return a.real, a.imag, -a.imag, a.real, b.real, b.imag


def _by_three(before: Points, after: Points) -> Matrix:
    (x1, y1), (x2, y2), (x3, y3) = before
    whole = (x2 - x1) * (y3 - y1) - (x3 - x1) * (y2 - y1)
    if not whole:
        raise NotAligned("The three points lie in one line.")

    def row(v1: float, v2: float, v3: float) -> tuple[float, float, float]:
        across = ((v2 - v1) * (y3 - y1) - (v3 - v1) * (y2 - y1)) / whole
        down = ((x2 - x1) * (v3 - v1) - (x3 - x1) * (v2 - v1)) / whole
        return across, down, v1 - across * x1 - down * y1

    (a, c, e), (b, d, f) = row(*(p[0] for p in after)), row(*(p[1] for p in after))
    return a, b, c, d, e, f


def fitted(before: tuple[int, int], after: tuple[int, int]) -> Matrix:
    """Without points: edge on edge."""
    return after[0] / before[0], 0.0, 0.0, after[1] / before[1], 0.0, 0.0
