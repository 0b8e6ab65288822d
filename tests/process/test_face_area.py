"""A face that does not fit the diameter of the piece is asked about. SCENARIO 2: the medal measures 58.40 mm across;
its disc is π/4 · 0.584² = 0.268 dm², and 1 in² = 0.064516 dm² (1 in = 25.4 mm exactly, 1959)."""

import pytest
from django.urls import reverse

from process.models import Cathode
from process.seeding import ensure_ranges
from records.models import Measurement
from tests.factories import make_item, make_mould, make_run, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def hang(client):
    ensure_ranges()
    client.force_login(make_user("technician"))
    medal = make_item("X.9")
    Measurement.objects.create(item=medal, what="diameter", length_mm=58.40)
    mould, run = make_mould(medal, side="obverse"), make_run("D-9", moulds=[])

    def post(face: str, unit: str = "dm²", **more):
        given = {"label": "obverse", "mould": mould.item.number, "face_area_dm2": face, "face_area_dm2_unit": unit}
        whole = {"total_area_dm2": "40", "total_area_dm2_unit": "dm²"}
        return client.post(reverse("cathode_add", args=[run.number]), given | whole | more)

    return post


@pytest.mark.parametrize(
    ("face", "unit", "words"),
    [
        ("4.48", "dm²", "4.48 in² would be usual. Is the unit right?"),
        ("28.9", "dm²", "28.9 cm² would be usual. Is the unit right?"),
        ("0.072", "dm²", "is 0.269 times a disc of 58.40"),  # from the radius taken for the diameter
    ],
)
def test_a_face_that_does_not_fit_is_asked_about(hang, face, unit, words):
    page = hang(face, unit)

    assert page.status_code == 422 and not Cathode.objects.exists()
    assert words in page.content.decode()


@pytest.mark.parametrize(("face", "unit"), [("0.289", "dm²"), ("4.48", "in²"), ("28,9", "cm²")])
def test_a_face_that_fits_is_not(hang, face, unit):
    assert hang(face, unit, total_area_dm2="0.402").status_code == 302
