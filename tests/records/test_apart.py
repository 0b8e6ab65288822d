"""Two pieces of one line side by side: page and sheet."""

import io

import pypdf
import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from records.apart import others_of, sheet_of
from records.models import Concession, Measurement
from tests.factories import make_copy, make_inspection, make_item, make_mark, make_party, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def reader(client: Client) -> Client:
    client.force_login(make_user("reader"))
    return client


@pytest.fixture
def pair():
    """The medal of 71.36 g and its copy, which was inspected at 64.71 g."""
    medal = make_item("OVM.1931.0044", title="Portrait medal", materials="leaded bronze")
    typed = {"mass_g": {"text": "71.36", "unit": "g", "plus_minus": 0.02}}
    Measurement.objects.create(item=medal, what="mass", mass_g=71.36, as_typed=typed)
    copy = make_copy("R.2026.1", model=medal)
    make_inspection(copy, mass_g=64.71)
    return medal, copy


def plain(text: str) -> str:
    return text.replace("\u2009", " ")


def line(sheet, key):
    return next(line for line in sheet.lines if line.feature.key == key)


def test_the_inspected_mass_of_the_copy_is_set_against_that_of_its_model(pair):
    found = line(sheet_of(*pair), "mass")

    assert (found.answer, plain(found.first)) == ("apart", "71.36 ± 0.02 g")
    assert plain(found.second).startswith("64.71 g, inspected")


def test_a_mark_on_one_of_the_two_tells_them_apart(pair):
    make_mark(pair[1], text="OVM 2026 COPY")

    assert line(sheet_of(*pair), "mark").answer == "apart"


def test_what_was_never_measured_is_left_open(pair):
    copy = make_copy("R.2026.4", model=pair[0])

    assert line(sheet_of(pair[0], copy), "mass").why == "Not measured on one of them."


def test_a_quoted_figure_gives_way_to_a_measured_one(pair):
    typed = {"mass_g": {"text": "70", "unit": "g", "kind": "quoted"}}
    Measurement.objects.create(item=pair[0], what="mass", mass_g=70, measured_on="2026-05-01", as_typed=typed)

    assert plain(line(sheet_of(*pair), "mass").first) == "71.36 ± 0.02 g"


def test_the_choice_offers_the_line_and_nothing_else(pair, reader):
    make_item("OVM.1900.1")
    assert [member.item.number for member in others_of(pair[1])] == ["OVM.1931.0044"]
    assert reader.get(reverse("apart_choice", args=["R.2026.1"])).status_code == 200


def test_two_pieces_without_a_common_line_are_said_to_be_so(pair, reader):
    stranger = make_item("OVM.1900.1")

    page = reader.get(reverse("apart", args=[stranger.number, "R.2026.1"])).content.decode()

    assert "not of one line" in page


def test_a_piece_is_not_set_beside_itself(pair, reader):
    assert reader.get(reverse("apart", args=["R.2026.1", "R.2026.1"])).status_code == 404


def test_the_sheet_is_one_page_and_names_the_copy_as_copy(pair, reader):
    answer = reader.get(reverse("apart_paper", args=["OVM.1931.0044", "R.2026.1"]))
    pages = pypdf.PdfReader(io.BytesIO(answer.content)).pages
    text = " ".join(pages[0].extract_text().split())

    assert (answer["Content-Type"], len(pages)) == ("application/pdf", 1)
    assert "OVM.1931.0044 or copy R.2026.1?" in text
    assert "Told apart by mass" in text


def test_the_sheet_comes_on_letter_too_and_on_a4_for_any_other_word(pair, reader):
    address = reverse("apart_paper", args=["OVM.1931.0044", "R.2026.1"])
    answers = {asked: reader.get(address, {"page_size": asked}).content for asked in ("A4", "Letter", "A0", "")}
    widths = {
        asked: round(pypdf.PdfReader(io.BytesIO(sheet)).pages[0].mediabox.width) for asked, sheet in answers.items()
    }

    assert widths == {"A4": 595, "Letter": 612, "A0": 595, "": 595}


def test_limits_of_use_of_either_piece_stand_on_page_and_sheet(pair, reader):
    concession = Concession.objects.create(
        number="C-2026-09", gate="G7", reason="Accepted thin.", limits_of_use="Not for handling.",
        given_by=make_party(), given_role="conservator", given_on="2026-03-04",
    )  # fmt: skip
    concession.items.add(pair[1])

    page = reader.get(reverse("apart", args=["OVM.1931.0044", "R.2026.1"])).content.decode()
    sheet = reader.get(reverse("apart_paper", args=["OVM.1931.0044", "R.2026.1"])).content
    text = " ".join(pypdf.PdfReader(io.BytesIO(sheet)).pages[0].extract_text().split())

    assert "Limits of use of R.2026.1" in page and reverse("thing_limits", args=["R.2026.1"]) in page
    assert "Not for handling." in reader.get(reverse("thing_limits", args=["R.2026.1"])).content.decode()
    assert "Limits of use of copy R.2026.1" in text and "Not for handling. (concession C-2026-09)" in text
    assert "Limits of use of OVM" not in page + text


def test_the_sheet_asks_for_both_pieces_at_once(pair, reader):
    make_mark(pair[1], text="OVM 2026 COPY")
    address = reverse("apart_paper", args=["OVM.1931.0044", "R.2026.1"])

    with CaptureQueriesContext(connection) as asked:
        assert reader.get(address).status_code == 200

    assert len(asked) <= 15
