"""The area of a cathode from its parts: by shape, foil or scan; the sum carries its ± into the plan."""

import hashlib
import re

import pytest
import trimesh
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse

from process.forms import scans as forms
from process.models import AreaPart
from tests.factories import make_cathode, make_run, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def cathode(client):
    client.force_login(make_user("technician"))
    return make_cathode(make_run(), label="obverse", face_area_dm2=0.3, total_area_dm2=0.5)


def add(client, cathode, shape: str, **fields):
    data = {"part": "face", "pieces_count": "1"} | fields
    return client.post(reverse("area_add", args=[cathode.pk, shape]), data)


def test_the_medal_of_the_demo_adds_up(client, cathode):
    """58.4 mm × 1.08 → 28.9 cm², with the flange 40.2 cm² (SCENARIO 7; DOMAIN P1)."""
    add(client, cathode, "disc", diameter_mm="58.4", relief_factor="1.08", uncertainty_pct="3")
    answer = add(
        client, cathode, "cone", part="flange", diameter_mm="69.64", inner_diameter_mm="58.4", uncertainty_pct="10"
    )

    assert answer.status_code == 302
    cathode.refresh_from_db()
    assert (cathode.face_area_dm2, cathode.total_area_dm2) == (0.289, 0.402)
    assert cathode.plus_minus("total_area_dm2") == pytest.approx(0.014)
    assert cathode.evidence("face_area_dm2") == "calculated"
    page = client.get(reverse("cathode_area", args=[cathode.pk])).content.decode()
    assert "A = π·D²/4·f" in page and "6.23\u2009in²" in page


@pytest.mark.parametrize(
    ("shape", "fields", "dm2", "percent"),
    [
        ("plate", {"length_mm": "150", "width_mm": "100"}, 1.5, 3),
        ("cylinder", {"diameter_mm": "2", "length_mm": "20", "length_mm_unit": "cm", "pieces_count": "2"}, 0.251, 3),
        ("cone", {"diameter_mm": "60", "height_mm": "40"}, 0.471, 5),
        ("cap", {"diameter_mm": "300", "height_mm": "40"}, 7.57, 5),
        ("profile", {"profile": "10 0\n10; 100\n"}, 0.628, 5),
        ("foil", {"foil_mass_g": "3.44", "sample_mass_g": "0.4", "sample_area_dm2": "1"}, 8.6, 5),
        ("entered", {"area_dm2": "62.3", "area_dm2_unit": "in²"}, 4.019, 20),
    ],
)
def test_each_shape_gives_its_area_and_its_usual_margin(client, cathode, shape, fields, dm2, percent):
    assert add(client, cathode, shape, **fields).status_code == 302

    part = AreaPart.objects.get()
    assert part.area_dm2 == pytest.approx(dm2, rel=1e-3)
    assert part.uncertainty_pct == percent


@pytest.mark.parametrize(
    ("shape", "fields", "words"),
    [
        ("disc", {"diameter_mm": "-3"}, "look at the sign"),
        ("profile", {"profile": "10 0"}, "at least two points"),
        ("profile", {"profile": "10 0\nwide 3"}, "Line 2"),
        ("profile", {"profile": "1 2 3"}, "write a radius and a height"),
        ("foil", {"foil_mass_g": "1", "sample_mass_g": "0", "sample_area_dm2": "1"}, "must be more than zero"),
        ("plate", {"length_mm": "x", "width_mm": "1"}, "cannot be read"),
        ("plate", {"length_mm": "1", "width_mm": "1", "pieces_count": "0"}, "At least one piece"),
        ("plate", {"length_mm": "1", "width_mm": "1", "uncertainty_pct": "300"}, "From 0 to 100"),
    ],
)
def test_measures_without_an_area_are_given_back(client, cathode, shape, fields, words):
    answer = add(client, cathode, shape, **fields)

    assert answer.status_code == 422
    assert words in answer.content.decode()
    assert not AreaPart.objects.exists()


def scan(content: bytes, name: str = "face.stl", **fields):
    return {"file": SimpleUploadedFile(name, content), "unit": "mm", "side": "+z"} | fields


def test_a_scan_gives_the_area_of_its_side_and_what_is_wrong_with_it(client, cathode):
    box = trimesh.creation.box((100.0, 50.0, 10.0)).export(file_type="stl")

    assert add(client, cathode, "scan", **scan(box)).status_code == 302

    part = AreaPart.objects.get()
    assert part.area_dm2 == pytest.approx(0.5)
    assert part.scan_facts["faces"] == 12 and part.scan_facts["volume_cm3"] == pytest.approx(50.0)
    assert "100.0 × 50.0 × 10.0 mm" in client.get(reverse("cathode_area", args=[cathode.pk])).content.decode()


@pytest.mark.parametrize(
    ("content", "name", "words"),
    [
        (b"solid of my argument, in prose", "face.stl", "holds no triangles"),
        (b"v 0 0 0\nv 1 0 0\nv 2 0 0\nf 1 2 3\n", "face.obj", "no area on that side"),
        (b"anything", "face.zip", "no STL, OBJ or PLY file"),
        (b"\xff\x00" * 300, "face.ply", "has not its heading"),
        (b"", "face.stl", "empty"),
        (bytes(80) + (2).to_bytes(4, "little") + bytes(100), "face.stl", "area|triangle|cannot be read"),
        (b"solid wood and other words\n" * 9, "face.stl", "holds no triangles"),
    ],
)
def test_what_is_no_scan_is_refused_and_nothing_kept(client, cathode, content, name, words):
    answer = add(client, cathode, "scan", **scan(content, name))

    assert answer.status_code == 422 and re.search(words, answer.content.decode())
    assert not AreaPart.objects.exists()


def test_a_scan_is_kept_byte_for_byte_and_given_back(client, cathode, django_capture_on_commit_callbacks):
    content = trimesh.creation.box((100, 50, 10)).export(file_type="stl")

    with django_capture_on_commit_callbacks(execute=True):
        add(client, cathode, "scan", **scan(content))

    part = AreaPart.objects.get()
    assert part.scan_facts["sha256"] == hashlib.sha256(content).hexdigest()
    answer = client.get(reverse("area_scan", args=[part.pk]))
    assert b"".join(answer.streaming_content) == content
    assert 'filename="face.stl"' in answer.headers["Content-Disposition"]


def test_of_an_old_scan_only_the_digest_is_there(client, cathode):
    part = AreaPart.objects.create(
        cathode=cathode, shape="scan", area_dm2=1, uncertainty_pct=3, scan_facts={"name": "a.stl", "sha256": "0" * 64}
    )

    assert client.get(reverse("area_scan", args=[part.pk])).status_code == 404


def test_a_scan_without_its_unit_is_asked_for_it(client, cathode):
    box = trimesh.creation.box((1.0, 1.0, 1.0)).export(file_type="stl")

    answer = add(client, cathode, "scan", **scan(box, unit=""))

    assert answer.status_code == 422 and not AreaPart.objects.exists()


def test_a_file_over_the_stated_size_is_refused(client, cathode, monkeypatch):
    monkeypatch.setattr(forms, "MOST_BYTES", 10)

    answer = add(client, cathode, "scan", **scan(b"x" * 11))

    assert answer.status_code == 422 and "larger than" in answer.content.decode()


@pytest.mark.parametrize("kind", ["stl", "obj", "ply"])
def test_a_mesh_over_the_stated_number_of_triangles_is_refused(client, cathode, monkeypatch, kind):
    monkeypatch.setattr(forms, "MOST_FACES", 10)
    box = trimesh.creation.box((100, 50, 10)).export(file_type=kind)
    content = box.encode() if isinstance(box, str) else box

    answer = add(client, cathode, "scan", **scan(content, f"face.{kind}"))

    assert answer.status_code == 422 and "12 faces, more than 10" in answer.content.decode()
    assert not AreaPart.objects.exists()


def test_the_limits_of_a_scan_are_stated_before_it_is_sent(client, cathode):
    page = client.get(reverse("area_add", args=[cathode.pk, "scan"])).content.decode()
    assert "up to 200 MB and 2 million triangles" in page


def test_a_part_is_taken_away_and_the_sum_follows(client, cathode):
    add(client, cathode, "entered", area_dm2="0.3")
    add(client, cathode, "entered", part="wires", area_dm2="0.1")
    wires = AreaPart.objects.get(part="wires")

    client.post(reverse("area_remove", args=[wires.pk]))

    cathode.refresh_from_db()
    assert cathode.total_area_dm2 == pytest.approx(0.3)


def test_a_typed_face_stays_where_only_wires_are_measured(client, cathode):
    add(client, cathode, "plate", part="thief", length_mm="100", width_mm="10", pieces_count="2")

    cathode.refresh_from_db()
    assert (cathode.face_area_dm2, cathode.total_area_dm2) == (0.3, pytest.approx(0.5))


def test_a_reader_is_refused(client, cathode):
    client.force_login(make_user("reader"))

    assert add(client, cathode, "plate", length_mm="1", width_mm="1").status_code == 403
