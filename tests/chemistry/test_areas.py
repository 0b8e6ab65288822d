"""Areas of shapes against integration by scipy and against meshes of trimesh: two independent ways."""

import math

import numpy as np
import pytest
import trimesh
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from uncertainties import ufloat

from process.chemistry.areas import cap_area, cone_area, cylinder_area, foil_area, plate_area, revolution_area
from process.chemistry.errors import ChemistryError
from process.chemistry.plan import relief_disc_area
from process.chemistry.worked import worked
from records.units import ureg

Q = ureg.Quantity
lengths = st.floats(min_value=0.5, max_value=500)


def mm(value: float):
    return Q(value, "mm")


@given(lengths, lengths)
def test_a_plate_is_one_side_of_a_box(a, b) -> None:
    box = trimesh.creation.box((a, b, 1.0))
    sides = box.area_faces[box.face_normals[:, 2] > 0.5].sum()
    assert plate_area(mm(a), mm(b)).m_as("mm**2") == pytest.approx(sides)


def test_a_cylinder_against_a_mesh_of_many_sides() -> None:
    mesh = trimesh.creation.cylinder(radius=12.0, height=80.0, sections=2048)
    ends = 2 * math.pi * 12.0**2
    assert cylinder_area(mm(24), mm(80)).m_as("mm**2") == pytest.approx(mesh.area - ends, rel=1e-5)


def test_a_cone_against_a_mesh_of_many_sides() -> None:
    mesh = trimesh.creation.cone(radius=30.0, height=40.0, sections=2048)
    foot = math.pi * 30.0**2
    assert cone_area(mm(60), mm(0), mm(40)).m_as("mm**2") == pytest.approx(mesh.area - foot, rel=1e-5)


def test_a_ring_without_width_is_nothing() -> None:
    """Its ± would be none: a root has no slope at zero."""
    with pytest.raises(ChemistryError, match="height: between two circles alike"):
        cone_area(Q(ufloat(60, 0.1), "mm"), Q(ufloat(60, 0.1), "mm"), Q(ufloat(0, 0.1), "mm"))


def test_a_point_of_a_profile_written_twice_changes_neither_area_nor_doubt() -> None:
    once = ([Q(ufloat(10, 0.1), "mm"), Q(ufloat(12, 0.1), "mm")], [mm(0), mm(5)])
    twice = tuple([column[0], *column] for column in once)
    found, again = revolution_area(*once).magnitude, revolution_area(*twice).magnitude
    assert again.nominal_value == pytest.approx(found.nominal_value)
    assert again.std_dev == pytest.approx(found.std_dev)


def test_a_ring_is_a_cone_without_height() -> None:
    assert cone_area(mm(70), mm(58.4), mm(0)).m_as("mm**2") == pytest.approx(math.pi / 4 * (70**2 - 58.4**2))


@given(lengths, st.floats(min_value=0.01, max_value=1.0))
def test_a_cap_against_integration(diameter, share) -> None:
    """Area of revolution of a circular arc, integrated over its angle by scipy."""
    height = share * diameter / 2
    radius = (diameter**2 / 4 + height**2) / (2 * height)
    angle = math.acos(1 - height / radius)
    area, _ = quad(lambda t: 2 * math.pi * radius**2 * math.sin(t), 0, angle)
    assert cap_area(mm(diameter), mm(height)).m_as("mm**2") == pytest.approx(area, rel=1e-9)


def test_half_a_sphere_is_the_deepest_cap_against_a_mesh() -> None:
    ball = trimesh.creation.icosphere(subdivisions=6, radius=50.0)
    assert 2 * cap_area(mm(100), mm(50)).m_as("mm**2") == pytest.approx(ball.area, rel=1e-3)


def test_a_turned_profile_against_integration() -> None:
    """A vase r(z) = 30 + 10·sin(z/20), 120 mm high, in 600 straight parts."""
    z = np.linspace(0, 120, 601)
    area, _ = quad(
        lambda h: 2 * math.pi * (30 + 10 * math.sin(h / 20)) * math.hypot(1, math.cos(h / 20) / 2), 0, 120
    )  # fmt: skip
    found = revolution_area([mm(r) for r in 30 + 10 * np.sin(z / 20)], [mm(h) for h in z])
    assert found.m_as("mm**2") == pytest.approx(area, rel=1e-5)


def test_a_turned_profile_against_a_mesh() -> None:
    outline = [(0.0, 0.0), (30.0, 5.0), (45.0, 40.0), (20.0, 90.0)]
    mesh = trimesh.creation.revolve(np.array(outline), sections=4096)
    found = revolution_area([mm(r) for r, _ in outline], [mm(h) for _, h in outline])
    assert found.m_as("mm**2") == pytest.approx(mesh.area, rel=1e-5)


def test_the_working_of_a_profile_lists_its_points() -> None:
    working = worked(revolution_area, radii=[mm(10), mm(10)], heights=[mm(0), mm(100)])
    assert "(10 mm; 10 mm), (0 mm; 100 mm)" in working.substitution


@pytest.mark.parametrize(
    ("radii", "heights"), [([1], [1]), ([1, 2], [1]), ([0, 0], [0, 10]), ([5, 5], [3, 3]), ([], [])]
)
def test_a_profile_without_area_is_refused(radii, heights) -> None:
    with pytest.raises(ChemistryError, match="radii"):
        revolution_area([mm(r) for r in radii], [mm(h) for h in heights])


def test_foil_over_the_mask() -> None:
    """8.60 dm² of foil at 0.4 g/dm² weigh 3.44 g (worked by hand)."""
    assert foil_area(Q(3.44, "g"), Q(0.4, "g"), Q(1, "dm**2")).m_as("dm**2") == pytest.approx(8.60)


def test_the_medal_of_the_demo() -> None:
    """58.4 mm × 1.08 is 28.9 cm²; with the flange 40.2 cm²."""
    face = relief_disc_area(mm(58.4), 1.08)
    assert face.m_as("cm**2") == pytest.approx(28.9, abs=0.05)
    ring = cone_area(mm(69.64), mm(58.4), mm(0))
    assert (face + ring).m_as("cm**2") == pytest.approx(40.2, abs=0.1)
