"""One picture laid over another: the points meet, whatever the turn, the scale and the shift."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from records.annotating.aligning import NotAligned, aligned, fitted

PLACE = st.floats(-4000, 4000)


def moved(matrix, point):
    a, b, c, d, e, f = matrix
    x, y = point
    return [a * x + c * y + e, b * x + d * y + f]


@given(st.floats(0.2, 5), st.floats(-math.pi, math.pi), PLACE, PLACE)
def test_two_points_give_shift_turn_and_scale(scale, turn, east, south):
    """Against numpy's rotation of the same points."""
    before = np.array([[100.0, 200.0], [900.0, 640.0], [333.0, 10.0]])
    rotation = scale * np.array([[math.cos(turn), -math.sin(turn)], [math.sin(turn), math.cos(turn)]])
    after = before @ rotation.T + [east, south]

    matrix = aligned(before[:2].tolist(), after[:2].tolist())

    assert moved(matrix, before[2]) == pytest.approx(after[2].tolist(), abs=1e-6)


def test_three_points_give_every_straight_map():
    """Against numpy's linear solver."""
    before, after = [[0, 0], [100, 10], [20, 90]], [[5, 7], [120, 2], [40, 130]]

    a, b, c, d, e, f = aligned(before, after)

    ground = np.array([[x, y, 1] for x, y in before])
    assert (a, c, e) == pytest.approx(np.linalg.solve(ground, [p[0] for p in after]))
    assert (b, d, f) == pytest.approx(np.linalg.solve(ground, [p[1] for p in after]))


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ([[0, 0]], [[1, 1]]),
        ([[0, 0], [1, 1]], [[0, 0]]),
        ([[2, 2], [2, 2]], [[0, 0], [1, 1]]),
        ([[0, 0], [1, 1], [2, 2]], [[0, 0], [1, 0], [0, 1]]),
    ],
)
def test_points_that_settle_nothing_are_refused(before, after):
    with pytest.raises(NotAligned):
        aligned(before, after)


def test_without_points_the_edges_meet():
    assert moved(fitted((400, 300), (800, 600)), (400, 300)) == [800, 600]
