"""Distances and areas on a picture, against scikit-image, geometry and the GUM's own sums."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from skimage.filters import threshold_otsu
from skimage.measure import approximate_polygon, find_contours, label, regionprops
from uncertainties import ufloat

from records.imaging.measuring import area_mm2, crosses_itself, distance_mm, mm_per_px
from tests.records.pictures.samples import coins

ONE, SURE_PX = ufloat(1, 1e-12), 1e-9
places = st.tuples(st.floats(0, 6000), st.floats(0, 4000))


def test_the_area_of_each_coin_is_what_scikit_image_counts_in_pixels():
    grey = np.pad(coins(), 2)
    regions = [r for r in regionprops(label(grey > threshold_otsu(grey))) if r.area_filled > 800 and r.solidity > 0.9]

    for region in regions:
        (contour, *_) = sorted(find_contours(np.pad(region.image_filled, 1), 0.5), key=len, reverse=True)
        points = [(x, y) for y, x in approximate_polygon(contour[:-1], 0.3)]
        assert area_mm2(points, ONE, SURE_PX).nominal_value == pytest.approx(region.area_filled, rel=0.02)
    assert len(regions) > 10


def test_a_distance_and_its_margin_by_the_sum_of_squares():
    """JCGM 100:2008, 5.1.2: 3000 px for 40 ± 0.05 mm, each point within 6 px; then 1500 px are measured."""
    scale = mm_per_px([(0, 0), (3000, 0)], ufloat(40, 0.05), 6)

    found = distance_mm([(0, 0), (900, 1200)], scale, 6)

    of_scale = math.hypot(0.05 / 40, 6 * math.sqrt(2) / 3000)
    assert scale.std_dev / scale.nominal_value == pytest.approx(of_scale)
    assert found.nominal_value == pytest.approx(20)
    assert found.std_dev == pytest.approx(20 * math.hypot(of_scale, 6 * math.sqrt(2) / 1500))


def test_a_bent_line_is_measured_along_itself():
    assert distance_mm([(0, 0), (30, 40), (30, 140)], ufloat(0.1, 1e-12), SURE_PX).nominal_value == pytest.approx(15)


def test_the_area_of_a_circle_drawn_with_many_points():
    turns = np.linspace(0, 2 * math.pi, 180, endpoint=False)
    points = [(500 + 300 * math.cos(t), 500 + 300 * math.sin(t)) for t in turns]

    assert area_mm2(points, ufloat(0.1, 1e-12), SURE_PX).nominal_value == pytest.approx(math.pi * 30**2, rel=1e-3)


@given(places, places)
def test_the_scale_measures_its_own_length(one, two):
    if math.dist(one, two) < 1:
        return
    scale = mm_per_px([one, two], 25, SURE_PX)

    assert distance_mm([two, one], scale, SURE_PX).nominal_value == pytest.approx(25)


@given(st.lists(places, min_size=3, max_size=8), st.floats(-500, 500))
def test_an_area_is_the_same_wherever_the_picture_begins_and_whichever_way_it_is_walked(points, far):
    moved = [(x + far, y - far) for x, y in reversed(points)]

    assert area_mm2(moved, ONE, SURE_PX).nominal_value == pytest.approx(
        area_mm2(points, ONE, SURE_PX).nominal_value, abs=1e-3
    )


@pytest.mark.parametrize(
    ("points", "crossed"),
    [
        ([(0, 0), (10, 0), (10, 10), (0, 10)], False),
        ([(0, 0), (10, 10), (10, 0), (0, 10)], True),
        ([(0, 0), (10, 0), (5, 8)], False),
        ([(0, 0), (10, 0), (10, 10), (5, -5)], True),
        ([(0, 0), (10, 0), (10, 10), (5, 5), (0, 10)], False),
    ],
)
def test_an_outline_that_crosses_itself_is_known(points, crossed):
    assert crosses_itself(points) is crossed
