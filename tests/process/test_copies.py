"""The list of copies and what a copy's page says of its making, its acceptance and its care."""

from datetime import date

import pytest
from django.urls import reverse

from process.models import FinishStep, MakingUp, ThicknessPoint
from process.panels.copies import making_of, summary_of
from process.summaries.care import care_of
from records.models import Item, Measurement
from tests.factories import (
    make_copy,
    make_inspection,
    make_item,
    make_mark,
    make_party,
    make_shell,
    make_term,
    make_user,
)  # fmt: skip

pytestmark = pytest.mark.django_db


@pytest.fixture
def reader(client):
    client.force_login(make_user("reader"))
    return client


def _medal():
    """Scenario 2: 58.40 mm, 71.36 g, density 8.80."""
    medal = make_item("OVM.1931.0044", object_type="medal")
    Measurement.objects.create(item=medal, what="diameter", length_mm=58.40)
    Measurement.objects.create(item=medal, what="mass", mass_g=71.36)
    Measurement.objects.create(item=medal, what="density", density_g_cm3=8.80)
    return medal


def _medal_copy(**fields):
    """R.2026.1: shells of the scenario's masses after trimming, tin-rich alloy inside."""
    medal = _medal()
    shells = [
        make_shell(medal, "S-03", trimmed_mass_g=15.10),
        make_shell(medal, "S-04", side="reverse", trimmed_mass_g=14.52),
    ]
    fill = make_term("fill", "tin-rich alloy, no lead")
    return make_copy("R.2026.1", shells=shells, **{"fill": fill, "fill_density_g_cm3": 7.30} | fields)


def _accepted(number):
    copy = make_copy(number)
    make_mark(copy)
    make_inspection(copy, signed_by=make_party(), signed_role="conservator", signed_at=copy.created_at)
    return copy


def test_the_list_names_the_state_of_each(reader):
    make_copy("R.2026.1")
    make_mark(make_copy("R.2026.2"))
    _accepted("R.2026.3")
    make_item("R.1889.7", kind="historic_copy", title="Electrotype of a medal")

    lines = reader.get(reverse("copy_list")).context["page"].rows

    assert {line["item"].number: (line["state"].word, line["state"].shape) for line in lines} == {
        "R.1889.7": ("historic copy", "look"),
        "R.2026.1": ("unmarked", "blocked"),
        "R.2026.2": ("marked, not inspected", "open"),
        "R.2026.3": ("accepted", "done"),
    }


@pytest.mark.parametrize(
    ("state", "number"),
    [("unmarked", "R.2026.1"), ("marked", "R.2026.2"), ("accepted", "R.2026.3"), ("historic", "R.1889.7")],
)
def test_the_list_and_its_export_show_one_state(reader, state, number):
    make_copy("R.2026.1")
    make_mark(make_copy("R.2026.2"))
    _accepted("R.2026.3")
    make_item("R.1889.7", kind="historic_copy")

    lines = reader.get(reverse("copy_list"), {"state": state}).context["page"].rows
    sheet = b"".join(reader.get(reverse("copy_list"), {"state": state, "export": "csv"}).streaming_content).decode()

    assert [line["item"].number for line in lines] == [number]
    assert len(sheet.strip().splitlines()) == 2 and number in sheet


def test_fifty_copies_take_few_questions(reader, django_assert_max_num_queries):
    medal = make_item()
    for index in range(51):
        make_item(f"R.2025.{index:02d}", kind="copy", title=medal.title)

    with django_assert_max_num_queries(15):
        page = reader.get(reverse("copy_list")).context["page"]

    assert len(page.rows) == 50 and page.next_key


def test_an_empty_list_says_what_belongs_there(reader):
    assert "No copies yet" in reader.get(reverse("copy_list")).content.decode()


def test_the_parts_foretell_mass_and_size():
    """Scenario, 8: 64.43 g and 58.353 mm for tin-rich alloy of 7.30 g/cm³."""
    copy = _medal_copy()
    summary = summary_of(copy, making_of(copy))

    figures = {figure.label: figure for figure in (*summary.mass, *summary.size)}
    assert figures["Mass predicted"].value == pytest.approx(64.43, abs=0.01)
    assert figures["Diameter predicted"].value == pytest.approx(58.353, abs=0.001)
    assert figures["Mass predicted"].working.source and figures["Diameter predicted"].working.source


def test_measured_stands_beside_predicted_with_its_deviation():
    copy = _medal_copy()
    make_inspection(copy)

    summary = summary_of(copy, making_of(copy))

    figures = {figure.label: figure for figure in (*summary.mass, *summary.size)}
    assert (figures["Mass measured"].value, figures["Mass measured"].kind) == (64.71, "measured")
    assert figures["Mass against the model"].value == pytest.approx(90.7, abs=0.05)  # scenario, 8
    assert figures["Deviation"].value == pytest.approx(-0.022, abs=0.002)


def test_mean_and_minimum_are_never_mixed():
    copy = _medal_copy()
    first = making_of(copy).shells.first()
    ThicknessPoint.objects.create(shell=first, place="recess", thickness_mm=0.31, method="section")

    part, other = summary_of(copy, making_of(copy)).parts

    assert (part.face.kind, part.least.kind) == ("calculated", "measured")
    assert part.face.value == pytest.approx(0.5858, abs=0.0001)  # scenario, 11
    assert (part.least.value, other.least) == (0.31, None)


def test_without_a_known_filling_no_mass_is_foretold():
    copy = _medal_copy(fill=None, fill_density_g_cm3=None)

    assert not summary_of(copy, making_of(copy)).mass


def test_the_page_shows_the_making_and_the_word_unmarked(reader, django_assert_max_num_queries):
    _medal_copy()

    with django_assert_max_num_queries(15):
        page = reader.get(reverse("item", args=["R.2026.1"])).content.decode()

    for words in ("How it was made", "S-03", "not measured", "Inspection and acceptance", "UNMARKED COPY"):
        assert words in page


@pytest.mark.parametrize(
    ("fields", "finish", "words"),
    [
        ({"lead_inside": "yes"}, "", "acid woods"),
        ({"lead_inside": "unknown"}, "", "as if it did"),
        ({"lead_inside": "no"}, "silvered", "no polishing"),
        ({"lead_inside": "no"}, "gilt", "no polishing"),
        ({"lead_inside": "no"}, "lacquer", "soft brush"),
    ],
)
def test_care_follows_from_what_it_is_made_of(fields, finish, words):
    steps = [FinishStep(finish=make_term("finish", finish), done_on=date(2026, 2, 22))] if finish else []

    assert words in " ".join(care_of(MakingUp(technique="joined", **fields), steps))


def test_a_core_is_never_wetted():
    assert "never wet" in " ".join(care_of(MakingUp(technique="core", core_id=1, lead_inside="no"), []))


def test_nearly_the_models_weight_and_silvered_asks_for_another_mark():
    """Decision table of the trade guide, 4.14: mass ratio 0.97–1.03 and silvered."""
    copy = _medal_copy()
    FinishStep.objects.create(
        copy=copy, finish=make_term("finish", "silvered"), thickness_um=10, done_on=date(2026, 2, 22)
    )
    make_inspection(copy, mass_g=71.0)

    assert "mark on the field" in " ".join(summary_of(copy, making_of(copy)).warnings)


def test_a_historic_copy_is_flagged_on_its_page(reader):
    make_item("R.1889.7", kind="historic_copy")

    page = reader.get(Item.objects.get(number="R.1889.7").get_absolute_url()).content.decode()

    assert "neither marked nor accepted by us" in page
