"""A photograph's scale by two points and a length; then distances and areas, by typed numbers alone."""

import pytest

from records.forms.points import PointsField
from records.models import PhotoMeasure, PhotoScale
from records.units.showing import THIN_SPACE
from tests.factories import make_item, make_photo, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def photo():
    return make_photo(make_item("R.1"), width_px_count=6000, height_px_count=4000, has_scale=True)


@pytest.fixture
def person(client):
    client.force_login(make_user("technician", "Pell"))
    return client


def with_scale(photo, **more) -> PhotoScale:
    about = {"points": [[500, 3800], [2500, 3800]], "length_mm": 40.0, "pointing_px_count": 4}
    return PhotoScale.objects.create(photo=photo, **about | more)


def sent(**more) -> dict[str, str]:
    return {
        "points": "500 3800\n2500 3800",
        "length_mm": "40 ± 0.05",
        "length_mm_unit": "mm",
        "pointing_px_count": "4",
    } | more


def test_two_typed_points_and_a_length_give_the_scale(person, photo):
    person.post(f"/photographs/{photo.pk}/scale/", sent())

    page = person.get(photo.get_absolute_url()).content.decode()
    scale = PhotoScale.objects.get()
    assert (scale.points, scale.length_mm, scale.plus_minus("length_mm")) == ([[500, 3800], [2500, 3800]], 40.0, 0.05)
    assert "1 mm is 50 px, ± 0.31 %" in page  # √(0.125² + (4·√2/2000)²) = 0.3094 %


def test_the_pixels_of_a_point_are_offered_for_the_size_of_the_picture(person, photo):
    form = person.get(f"/photographs/{photo.pk}/scale/").context["form"]

    assert form["pointing_px_count"].value() == 8  # 6000 px seen on 800


@pytest.mark.parametrize(
    ("points", "words"),
    [
        ("500 3800", "Set 2 points"),
        ("500 3800\n500 3800", "lie on one another"),
        ("500 3800\n7000 10", "outside the picture of 6000 × 4000"),
        ("500 3800\nten left", "is no point"),
        ("1 1\n2 2\n3 3", "Set 2 points"),
        ("", "required"),
    ],
)
def test_points_that_give_no_scale_are_said_and_kept_typed(person, photo, points, words):
    answer = person.post(f"/photographs/{photo.pk}/scale/", sent(points=points))

    assert answer.status_code == 422 and not PhotoScale.objects.exists()
    assert words in answer.content.decode().replace("This field is", "")
    assert answer.context["form"]["points"].value() == points


@pytest.mark.parametrize("line", ["12.5 40", "12,5 40", "12.5; 40", "12.5, 40", "  12.5   40 "])
def test_a_point_may_be_written_in_the_usual_ways(line):
    field = PointsField(size_px=(100, 100), least=1, most=1)

    assert field.clean(line) == [[12.5, 40.0]]


def test_a_length_of_nothing_is_refused(person, photo):
    assert person.post(f"/photographs/{photo.pk}/scale/", sent(length_mm="0")).status_code == 422


def test_a_distance_and_an_area_are_reckoned_with_their_margin_and_never_typed(person, photo):
    with_scale(photo)
    me = person.get(f"/photographs/{photo.pk}/measures/distance/new/").context["form"]["measured_by"].value()
    line = {"measured_by": me, "what": "diameter", "points": "1000 1000\n3920 1000"}
    spot = {"measured_by": me, "what": "green spot", "points": "100 100\n200 100\n200 200\n100 200"}

    person.post(f"/photographs/{photo.pk}/measures/distance/new/", line)
    person.post(f"/photographs/{photo.pk}/measures/area/new/", spot)

    page = person.get(photo.get_absolute_url()).content.decode().replace(THIN_SPACE, " ")
    assert "58.40 ± 0.20 mm" in page
    assert "4.00 ± 0.23 mm²" in page
    assert [row.measured_by.name for row in PhotoMeasure.objects.all()] == ["Pell", "Pell"]


def test_another_scale_changes_every_figure(person, photo):
    scale = with_scale(photo)
    PhotoMeasure.objects.create(photo=photo, kind="distance", what="rim", points=[[0, 0], [500, 0]])
    assert "10.0" in person.get(photo.get_absolute_url()).content.decode()

    scale.length_mm = 80.0
    scale.save()

    assert "20.0" in person.get(photo.get_absolute_url()).content.decode()


def test_an_outline_that_crosses_itself_is_refused(person, photo):
    with_scale(photo)
    crossed = {"what": "spot", "points": "0 0\n100 100\n100 0\n0 100"}

    answer = person.post(f"/photographs/{photo.pk}/measures/area/new/", crossed)

    assert "crosses itself" in answer.content.decode() and not PhotoMeasure.objects.exists()


def test_without_a_scale_the_way_leads_to_setting_it(person, photo):
    answer = person.get(f"/photographs/{photo.pk}/measures/distance/new/")

    assert answer.url == f"/photographs/{photo.pk}/scale/"


def test_a_wrong_measure_is_struck_out_with_its_reason(person, photo):
    with_scale(photo)
    row = PhotoMeasure.objects.create(photo=photo, kind="distance", what="rim", points=[[0, 0], [500, 0]])

    person.post(f"/strike-out/photo-measure/{row.pk}/", {"reason": "the wrong edge"})

    assert not PhotoMeasure.objects.exists()
    assert "rim" not in person.get(photo.get_absolute_url()).content.decode()


def test_a_reader_sees_the_figures_and_sets_nothing(client, photo):
    with_scale(photo)
    client.force_login(make_user("reader"))

    assert "1 mm is" in client.get(photo.get_absolute_url()).content.decode()
    assert client.post(f"/photographs/{photo.pk}/scale/", sent()).status_code == 403
