"""Numbers on a picture: apart from one another and from what they number, a line to what lies far."""

from dataclasses import dataclass
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from records.annotating.labels import ROOM, leaders, placed, places

PICTURE = (3600, 2400)


@dataclass
class Shape:
    outline: list[tuple[float, float]]
    label: str = "1"
    kind: str = "polygon"


def apart(one, other) -> bool:
    return one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]


def square(x: float, y: float, side: float) -> list[tuple[float, float]]:
    return [(x, y), (x + side, y), (x + side, y + side), (x, y + side)]


def test_a_small_shape_within_a_larger_one_gets_its_number_outside_with_a_line():
    outer, inner = placed([Shape(square(1000, 1000, 200)), Shape(square(1150, 1150, 20), "3")], PICTURE)

    across, down = abs(outer.x - inner.x), abs(outer.y - inner.y)
    assert max(across, down) >= outer.number_px * ROOM * 0.8
    assert not (1000 <= inner.x <= 1200 and 1000 <= inner.y <= 1200)
    assert inner.lead and inner.lead.endswith(("1150.0 1150.0", "1170.0 1150.0", "1170.0 1170.0", "1150.0 1170.0"))


def test_a_number_right_beside_its_shape_needs_no_line():
    (alone,) = placed([Shape(square(1000, 1000, 200))], PICTURE)

    assert alone.lead == ""
    assert alone.x > 1200


def test_a_line_ends_at_the_nearest_corner_and_begins_at_the_edge_of_the_number():
    number, far, near = (100, 100, 120, 120), [(200, 110), (300, 110)], [(125, 110)]

    assert leaders([number], [far], [(200, 110, 300, 110)]) == [(120, 110, 200, 110)]
    assert leaders([number], [near], [(125, 110, 125, 110)]) == [None]


def test_a_number_beside_two_shapes_says_by_a_line_which_is_meant():
    number, mine, other = (100, 100, 120, 120), (125, 110, 140, 120), (90, 125, 110, 140)
    outline = [(125, 110), (140, 110), (140, 120), (125, 120)]

    (line, _) = leaders([number, (0, 0, 1, 1)], [outline, [(90, 125)]], [mine, other])

    assert line == (120, 110, 125, 110)


@pytest.mark.parametrize("count", [1, 5, 12])
def test_findings_in_one_place_keep_their_numbers_apart(count):
    boxes = [(500.0, 500.0, 520.0, 520.0)] * count

    for one, other in combinations(places(boxes, [(45.0, 60.0)] * count, (3600.0, 2400.0)), 2):
        assert apart(one, other)


@given(st.lists(st.tuples(st.floats(0, 3600), st.floats(0, 2400)), min_size=1, max_size=6))
def test_no_number_leaves_the_picture(points):
    shapes = [Shape([point], str(number), "point") for number, point in enumerate(points, 1)]

    for one in placed(shapes, PICTURE):
        assert 0 < one.x < 3600 and 0 < one.y < 2400
