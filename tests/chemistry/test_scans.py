"""A scan's area and volume against trimesh's own shapes of known size; and what is refused before it is read."""

import math
import struct

import numpy as np
import pytest
import trimesh
from hypothesis import given, settings
from hypothesis import strategies as st

from process.chemistry.errors import ChemistryError
from process.chemistry.scans import read_scan
from process.demo.pictures.scanned import stl_bytes

BALL = trimesh.creation.icosphere(subdivisions=4, radius=10.0)


@pytest.mark.parametrize("kind", ["stl", "obj", "ply", "stl_ascii"])
def test_area_and_volume_of_a_ball(kind) -> None:
    content = BALL.export(file_type=kind)
    content = content.encode() if isinstance(content, str) else content
    scan = read_scan(content, f"ball.{kind[:3]}", "mm")
    assert scan.area.m_as("mm**2") == pytest.approx(4 * math.pi * 100, rel=0.003)
    assert scan.volume.m_as("mm**3") == pytest.approx(4 / 3 * math.pi * 1000, rel=0.005)
    assert (scan.open_edge_count, scan.flipped, scan.remarks) == (0, False, ())


def test_the_unit_is_asked_and_makes_a_hundredfold_and_a_thousandfold() -> None:
    content = BALL.export(file_type="stl")
    small, large = (read_scan(content, "ball.stl", unit) for unit in ("mm", "cm"))
    assert large.area.magnitude == pytest.approx(100 * small.area.magnitude)
    assert large.volume.magnitude == pytest.approx(1000 * small.volume.magnitude)
    assert large.extent_mm[0] == pytest.approx(200.0)
    with pytest.raises(ChemistryError, match="unit: a file of points says no unit"):
        read_scan(content, "ball.stl", "")


def test_only_the_chosen_side_counts() -> None:
    box = trimesh.creation.box((100.0, 50.0, 10.0)).export(file_type="stl")
    assert read_scan(box, "box.stl", "mm", "+z").area.m_as("mm**2") == pytest.approx(5000)
    assert read_scan(box, "box.stl", "mm", "-x").area.m_as("mm**2") == pytest.approx(500)
    assert read_scan(box, "box.stl", "mm").area.m_as("mm**2") == pytest.approx(13_000)


def test_the_face_of_the_demo_has_the_surface_that_its_plan_says() -> None:
    """A disc of 44.82 mm with a relief factor of 1.07, seen from above; one border, nothing flipped."""
    scan = read_scan(stl_bytes(44.82), "M-2026-05-face.stl", "mm", "+z")
    assert scan.area.m_as("mm**2") == pytest.approx(1.07 * math.pi * 44.82**2 / 4, rel=1e-3)
    assert (scan.flipped, scan.side_areas["-z"].magnitude) == (False, 0)


def test_holes_and_flipped_faces_are_reported() -> None:
    holed = trimesh.Trimesh(BALL.vertices, BALL.faces[5:], process=False)
    scan = read_scan(holed.export(file_type="ply"), "ball.ply", "mm")
    assert scan.open_edge_count > 0 and scan.volume is None and "holes" in scan.remarks[0]
    faces = BALL.faces.copy()
    faces[0] = faces[0][::-1]
    turned = read_scan(trimesh.Trimesh(BALL.vertices, faces, process=False).export(file_type="ply"), "b.ply", "mm")
    assert turned.flipped and "look the other way" in turned.remarks[-1]


FLAT = b"v 0 0 0\nv 1 0 0\nv 2 0 0\nf 1 2 3\n"
NAN = b"v 0 0 nan\nv 1 0 0\nv 0 1 0\nf 1 2 3\n"


@pytest.mark.parametrize(
    ("content", "name", "why"),
    [
        (b"", "a.stl", "empty"),
        (b"solid wood and other words\n" * 9, "a.stl", "holds no triangles"),
        (b"just a letter to a friend, long enough to be taken for a heading of eighty bytes or more", "a.stl",
         "holds no triangles"),
        (b"solid x facet normal of my argument", "a.stl", "cannot be read|lack|no area"),
        (b"ply\nformat ascii 1.0\nend_header\n", "a.ply", "heading"),
        (b"just words", "a.ply", "heading"),
        (b"just words", "a.obj", "no triangle"),
        (FLAT, "a.obj", "no area"),
        (NAN, "a.obj", "not numbers|no area"),
        (b"v 0 0 0\nf 1 2 99\n", "a.obj", "cannot be read|lack"),
        (b"v 0 0\nv 1 0\nv 0 1\nf 1 2 3\n", "a.obj", "lack a third number"),
        (b"v 0 0 0\nv 9e99 0 0\nv 0 1 0\nf 1 2 3\n", "a.obj", "farther than 10,000,000"),
        (b"MZ\x00", "a.exe", "no STL, OBJ or PLY file"),
        (b"\x00" * 80 + struct.pack("<I", 2) + b"\x00" * 100, "a.stl", "no area|no triangle|cannot be read"),
    ],
)  # fmt: skip
def test_what_is_no_surface_is_refused_with_its_reason(content, name, why) -> None:
    with pytest.raises(ChemistryError, match=why):
        read_scan(content, name, "mm")


@pytest.mark.parametrize("kind", ["stl", "obj", "ply"])
def test_too_many_faces_are_refused_before_reading(kind) -> None:
    content = BALL.export(file_type=kind)
    content = content.encode() if isinstance(content, str) else content
    with pytest.raises(ChemistryError, match="faces, more than 100"):
        read_scan(content, f"ball.{kind}", "mm", most_faces=100)


def test_a_heading_may_not_lie_about_its_faces() -> None:
    """A PLY that announces few faces and an STL that announces many cannot get by."""
    head = b"\x00" * 80 + struct.pack("<I", 4_000_000_000)
    with pytest.raises(ChemistryError, match="holds no triangles"):
        read_scan(head + b"\x00" * 50, "a.stl", "mm")
    assert np.isfinite(read_scan(BALL.export(file_type="ply"), "a.ply", "mm").area.magnitude)


def test_what_is_being_done_is_told_in_order() -> None:
    told: list[tuple[str, float]] = []
    read_scan(BALL.export(file_type="stl"), "ball.stl", "mm", tell=lambda step, share: told.append((step, share)))
    shares = [share for _, share in told]
    assert [step for step, _ in told] == ["reading the triangles", "joining their points", "measuring the sides"]
    assert shares == sorted(shares) and shares[0] > 0 and shares[-1] < 1


def test_open_edges_are_counted_as_by_rows() -> None:
    """Each edge as one number, against numpy's unique rows."""
    bowl = trimesh.Trimesh(BALL.vertices, BALL.faces[BALL.triangles_center[:, 2] > 0], process=False)
    _, counts = np.unique(np.sort(bowl.edges, axis=1), axis=0, return_counts=True)
    scan = read_scan(bowl.export(file_type="ply"), "bowl.ply", "mm")
    assert scan.open_edge_count == (counts == 1).sum() > 0


SMALL = trimesh.creation.icosphere(subdivisions=1, radius=10.0)
PIECES = [b"nan", b"1e999", b"-1", b"999999999999", b"\0", b"\n", b"f 1/2/3 -1 0\n", b"element face 4000000000\n"]


@given(st.sampled_from(["stl", "stl_ascii", "obj", "ply"]), st.data())
@settings(max_examples=150, deadline=None, derandomize=True)
def test_a_damaged_file_is_read_or_refused_and_nothing_else(kind, data) -> None:
    whole = SMALL.export(file_type=kind)
    content = whole.encode() if isinstance(whole, str) else whole
    at = data.draw(st.integers(0, min(600, len(content))))
    after = data.draw(st.integers(at, min(at + 60, len(content))))
    damaged = content[:at] + data.draw(st.sampled_from(PIECES)) + content[after:]
    try:
        scan = read_scan(damaged, f"a.{kind[:3]}", "mm")
    except ChemistryError as refused:
        assert refused.problem
    else:
        assert 0 < scan.area.magnitude < math.inf
