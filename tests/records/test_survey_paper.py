"""The round of surveys on paper: what is due at each place, what was found last, room to write."""

from datetime import date
from io import BytesIO

import pytest
from django.urls import reverse
from pypdf import PdfReader

from records.models import Place
from records.surveys import surveyed, surveys_of
from tests.factories import make_item, make_place, make_report, make_user
from tests.pdf.reading import text
from tests.records.findings import make_finding

pytestmark = pytest.mark.django_db
LIST = "/surveys/list.pdf"


@pytest.fixture
def conservator(client, monkeypatch):
    monkeypatch.setattr("records.clock.today", lambda: date(2026, 11, 25))
    client.force_login(make_user("conservator", "tobias"))
    return client


def due(number: str, place: str = "Gallery, case 4", **fields):
    kept_at = Place.objects.filter(name=place).first() or make_place(place)
    item = make_item(number, kind="historic_copy", place=kept_at, **fields)
    return make_report(item, "survey", examined_on=date(2024, 11, 1))


def test_each_piece_stands_at_its_place_with_what_was_found_last(conservator):
    make_finding(due("R.1889.7"), location="seam, 7 h", extent="2 mm")
    due("R.2", "Store 2")

    answer = conservator.get(LIST)
    said = " ".join(text(answer.content).split())

    assert answer["Content-Type"] == "application/pdf"
    assert said.index("Gallery, case 4") < said.index("R.1889.7") < said.index("Store 2") < said.index("R.2 ")
    assert "seam, 7 h, 2 mm" in said and "Overdue: 1 November 2026" in said
    assert "it never counts as “same”" in said


def test_only_what_the_page_shows_is_printed_with_the_light_of_the_round(conservator):
    due("R.1889.7")
    other = due("R.2", "Store 2").item

    asked = {"place": other.place_id, "light": "raking, left", "page_size": "Letter"}
    content = conservator.get(LIST, asked).content
    said = " ".join(text(content).split())

    assert "R.2 " in said and "R.1889.7" not in said
    assert "raking, left" in said and "Due now or within a month, kept at Store 2." in said
    assert PdfReader(BytesIO(content)).pages[0].mediabox.width == 612


def test_long_words_and_many_pieces_keep_within_the_page(conservator):
    for number in range(40):
        report = due(f"R.{number:03d}", title="A medal of the tide mill with a very long name " * 3)
        make_finding(report, location="obverse rim between four and seven o’clock, beneath the seam " * 2)

    pages = PdfReader(BytesIO(conservator.get(LIST).content)).pages

    assert 5 < len(pages) < 20
    assert all("Changed" in page.extract_text() for page in pages[:-1])


def test_an_empty_round_says_so(conservator):
    assert "Nothing is due in this round." in text(conservator.get(LIST).content)


def test_sixty_pieces_are_printed_with_few_questions(conservator, django_assert_max_num_queries):
    for number in range(60):
        due(f"R.{number:03d}")

    with django_assert_max_num_queries(15):
        conservator.get(LIST)


def test_more_than_a_day_s_round_is_not_printed_but_said(conservator, monkeypatch):
    monkeypatch.setattr("records.views.surveys.ON_PAPER", 1)
    due("R.1"), due("R.2")

    page = conservator.get(reverse("survey_list")).content.decode()

    assert "choose a place or a shorter time to print this round" in page and LIST not in page
    assert len(surveys_of(surveyed())) == 2
