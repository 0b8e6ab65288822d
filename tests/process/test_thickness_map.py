"""The wall point by point: placed on pictures, judged, never a mean entered as measured (fault 3)."""

from xml.etree.ElementTree import fromstring

import pytest
from django.urls import reverse
from hypothesis import given
from hypothesis import strategies as st

from process.forms.thickness import decimals_in_mm, equals_mean
from process.models import Inspection, Shell, ThicknessPoint
from process.seeding import ensure_ranges
from process.summaries.thickness import wall_of
from records import clock
from records.models import Specification
from records.pdf.spot_map import Chip, Spot, SpotMap, svg
from records.pdf.spot_map.layout import lay_out
from tests.factories import make_commission, make_copy, make_mould, make_party, make_photo, make_user
from tests.process.scenario_runs import coin_run, medal_run

pytestmark = pytest.mark.django_db


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician"))
    return client


@pytest.fixture
def coin() -> Shell:
    """S-05 of the scenario: mean 0.422 mm with its flange, 0.394 mm of the trimmed face; nothing measured yet."""
    coin_run()
    return Shell.objects.get(item__number="S-05")


def send(client, shell: Shell, **fields):
    data = {"place": "rim", "thickness_mm": "0.48", "thickness_mm_unit": "mm", "method": "micrometer"} | fields
    return client.post(reverse("thickness_add", args=[shell.item.number]), data)


def point(shell: Shell, thickness: float, place: str = "rim", **fields) -> ThicknessPoint:
    about = {"place": place, "thickness_mm": thickness, "method": "micrometer"}
    return ThicknessPoint.objects.create(shell=shell, **about | fields)


def test_mean_and_scatter_of_the_points_are_reckoned_and_said_to_be_of_chosen_places(technician, coin):
    """0.48, 0.40, 0.42, 0.28 mm: mean 0.395, standard deviation 0.0839 mm, by hand and by JCGM 100, 4.2."""
    for place, thickness in (("rim", 0.48), ("field", 0.40), ("shield", 0.42), ("between the letters", 0.28)):
        point(coin, thickness, place)

    mean, scatter = wall_of(coin, coin.thickness_points.all(), None, None).scatter

    assert (mean.value, scatter.value) == pytest.approx((0.395, 0.08386), abs=1e-5)
    assert {mean.kind, scatter.kind} == {"calculated"} and "no mean of the wall" in mean.note
    page = technician.get(coin.get_absolute_url()).content.decode()
    assert "Mean and scatter of the points" in page


def test_of_two_points_no_scatter_is_told(coin):
    rows = [point(coin, 0.48), point(coin, 0.40, "field")]
    assert wall_of(coin, rows, None, None).scatter == ()


@pytest.mark.parametrize("typed", [("0.42", "mm"), ("0,422", "mm"), ("422", "µm"), ("0.39", "mm")])
def test_the_calculated_mean_as_the_only_measured_point_is_asked_about(technician, coin, typed):
    number, unit = typed

    answer = send(technician, coin, thickness_mm=number, thickness_mm_unit=unit)

    page = answer.content.decode()
    assert answer.status_code == 422 and not ThicknessPoint.objects.exists()
    assert "is the mean calculated from the mass" in page and "never entered as measured" in page
    assert f'value="{number}"' in page


def test_who_stands_by_a_reading_keeps_it_with_that_word(technician, coin):
    page = send(technician, coin, thickness_mm="0.42").content.decode()
    said = page.split('name="it_is_so"')[1].split('value="')[1].split('"')[0]

    answer = send(technician, coin, thickness_mm="0.42", it_is_so=said)

    assert answer.status_code == 302
    assert "Confirmed although unusual" in ThicknessPoint.objects.get().history.get().history_change_reason


def test_beside_other_points_the_same_number_may_well_be_measured(technician, coin):
    """The shield of S-05 really shows 0.42 mm: beside 0.28 between the letters nobody takes it for the mean."""
    point(coin, 0.28, "between the letters")

    assert send(technician, coin, place="shield", thickness_mm="0.42").status_code == 302


@pytest.mark.parametrize("place", ["mean", "Average of the face", "calculated", "overall"])
def test_a_mean_has_no_place(technician, coin, place):
    answer = send(technician, coin, place=place)

    assert answer.status_code == 422 and "is no place" in answer.content.decode()


def test_a_point_lies_on_its_photograph(technician, coin):
    photo = make_photo(coin.item, width_px_count=1600, height_px_count=1200)

    answer = send(technician, coin, photo=photo.pk, x_pct="71.3", x_pct_unit="%", y_pct="42", y_pct_unit="%")
    page = technician.get(coin.get_absolute_url()).content.decode()

    row = ThicknessPoint.objects.get()
    assert answer.url == f"{coin.get_absolute_url()}#wall" and (row.x_pct, row.y_pct) == (71.3, 42.0)
    assert f'href="/photographs/{photo.pk}/screen/"' in page and "rim 0.48" in page
    assert "hatched: mean" in page and "calculated from the mass" in page


def test_a_point_lies_on_an_outline_where_there_is_no_photograph(technician, coin):
    send(technician, coin, outline="disc", x_pct="10", x_pct_unit="%", y_pct="50", y_pct_unit="%")

    assert "<ellipse" in technician.get(coin.get_absolute_url()).content.decode()


def test_without_any_picture_the_list_says_it(technician, coin):
    send(technician, coin)
    page = technician.get(coin.get_absolute_url()).content.decode()

    assert "spot-map" not in page and "1 point measured" in page


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"x_pct": "10"}, "give both, or neither"),
        ({"x_pct": "10", "y_pct": "120", "outline": "disc"}, "From 0 to 100"),
        ({"x_pct": "10", "y_pct": "20"}, "on which photograph"),
        ({"thickness_mm": "0"}, "thicker than nothing"),
        ({"thickness_mm": "9" * 70}, "64"),
    ],
)
def test_what_cannot_be_comes_back_as_typed(technician, coin, fields, words):
    answer = send(technician, coin, place="under the chin", **fields)

    assert answer.status_code == 422
    assert words in answer.content.decode() and "under the chin" in answer.content.decode()


def test_keep_and_enter_another_stays_at_the_same_picture_with_the_same_method(technician, coin):
    answer = send(technician, coin, outline="disc", x_pct="10", y_pct="50", another="1")

    assert answer.status_code == 302 and "outline=disc" in answer.url and "method=micrometer" in answer.url


def test_a_point_is_corrected(technician, coin):
    row = point(coin, 0.48)

    page = technician.get(reverse("thickness_edit", args=[row.pk]))
    answer = technician.post(
        reverse("thickness_edit", args=[row.pk]),
        {"place": "rim, 3 h", "thickness_mm": "0.47", "thickness_mm_unit": "mm", "method": "section", "version": 0},
    )

    row.refresh_from_db()
    assert (page.status_code, answer.status_code, row.place, row.thickness_mm) == (200, 302, "rim, 3 h", 0.47)


def test_a_reader_enters_no_point(client, coin):
    client.force_login(make_user("reader"))

    assert send(client, coin).status_code == 403 and not ThicknessPoint.objects.exists()


def test_the_least_against_the_specification(technician, coin):
    run, mould = coin.cathode.run, make_mould()
    coin.cathode.mould = mould
    coin.cathode.save()
    run.commission = make_commission(originals=[mould.model])
    run.save()
    Specification.objects.create(
        commission=run.commission, item=mould.model, technique="hollow", thickness_mean_mm=0.42, thickness_min_mm=0.30
    )
    point(coin, 0.28, "between the letters")
    point(coin, 0.48)

    page = technician.get(coin.get_absolute_url()).content.decode().replace("\u2009", " ")

    assert "1 of 2 points below the 0.30 mm specified: between the letters 0.28" in page
    assert "■ below what is specified" in page


def test_a_struck_point_is_on_no_map_and_in_no_judgement(technician, coin):
    thin = point(coin, 0.05, "slipped", outline="disc", x_pct=10, y_pct=10)
    thin.struck_at = clock.now()
    thin.save()

    wall = wall_of(coin, coin.thickness_points.all(), None, 0.3)
    page = technician.get(coin.get_absolute_url()).content.decode()

    assert (wall.points, wall.maps, wall.below) == ((), (), ())
    assert "slipped" in page and "spot-map" not in page


def test_where_nothing_was_measured_the_least_is_an_estimate_and_says_so(technician):
    medal_run()
    shell = Shell.objects.get(item__number="S-04")  # no points

    page = technician.get(shell.get_absolute_url()).content.decode()

    assert "estimated" in page and "No point of the wall has been measured" in page


def inspect(client, copy, **fields):
    data = {"inspected_on": "2026-03-20", "inspector": make_party().name, "mass_g": "8.78",
            "mass_g_unit": "g", "thickness_min_mm_unit": "mm", "decision": "accept"} | fields  # fmt: skip
    return client.post(reverse("inspection_add", args=[copy.number]), data)


@pytest.fixture
def copy(coin):
    return make_copy("R.2026.2", shells=list(Shell.objects.all()), join="adhesive")  # cold: its walls have a boundary


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator"))
    return client


@pytest.mark.parametrize("mean", ["0.42", "0.39"])
def test_an_inspection_takes_no_mean_for_the_least_measured(conservator, copy, mean):
    """S-05, “0.42 mm measured”, while nothing or only 0.28 mm was measured."""
    answer = inspect(conservator, copy, thickness_min_mm=mean, thickness_method="micrometer", thickness_place="wall")

    assert answer.status_code == 422 and not Inspection.objects.exists()
    assert "is the mean calculated from the mass" in answer.content.decode()


def test_beside_a_thinner_point_it_is_refused_with_that_point(conservator, copy, coin):
    point(coin, 0.28, "between the letters")

    answer = inspect(conservator, copy, thickness_min_mm="0.42", thickness_method="micrometer")

    assert answer.status_code == 422 and "between the letters" in answer.content.decode()


def test_the_least_of_the_points_brings_its_place(conservator, copy, coin):
    point(coin, 0.28, "between the letters")

    inspect(conservator, copy, thickness_min_mm="0.28", thickness_method="micrometer", it_is_so="")

    assert Inspection.objects.get().thickness_place == "between the letters of S-05"


def test_a_least_of_no_point_says_where(conservator, copy):
    answer = inspect(conservator, copy, thickness_min_mm="0.25", thickness_method="micrometer")

    assert answer.status_code == 422 and "Say where it was measured" in answer.content.decode()


@given(st.floats(0.01, 9), st.integers(2, 3))
def test_a_mean_written_with_its_digits_is_known_again(mean, decimals):
    written = f"{mean:.{decimals}f}"

    assert equals_mean(float(written), decimals_in_mm(written, "mm"), mean)
    assert not equals_mean(float(written) + 2 * 10**-decimals, decimals, mean)


@given(st.lists(st.tuples(st.floats(0, 1), st.floats(0, 1), st.text(max_size=30)), max_size=14), st.floats(0.3, 3))
def test_labels_stay_on_the_picture_and_the_drawing_is_well_formed(spots, ratio):
    named = tuple(Spot(x, y, "0.42", "".join(c for c in name if c.isprintable())) for x, y, name in spots)
    shown = SpotMap(
        "<Map> & more", "“x”", named,
        (Chip("calculated", "hatched: mean 0.42 mm, calculated from the mass"),), ratio=ratio, href="/a?b&c",
    )  # fmt: skip
    layout = lay_out(shown, 720, 15, lambda text: 8.0 * len(text), named=False)

    assert all(box[0] >= 0 and box[1] >= 0 for box in (label.box for label in layout.labels))
    assert all(label.box[2] <= 720.001 for label in layout.labels)
    assert fromstring(svg(shown, "m", 360.0, grid=True)).tag.endswith("svg")


def test_a_wall_in_the_wrong_unit_is_asked_about(technician, coin):
    ensure_ranges()

    answer = send(technician, coin, thickness_mm="330", thickness_mm_unit="mm")

    assert answer.status_code == 422 and "330 µm" in answer.content.decode().replace("\u202f", " ")
    assert not coin.thickness_points.exists()
