"""The descent sheet: the line as a drawing in vectors, and the questions it answers, on as many pages as it needs."""

from io import BytesIO
from itertools import pairwise

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from pypdf import PdfReader

from records.models import Document
from records.services import papers
from tests.factories import make_item, make_party, make_place, make_user
from tests.pdf.reading import pages, size, text
from tests.records.test_descent_pages import copy_of, link

pytestmark = pytest.mark.django_db


def sheet_of(item, **more) -> bytes:
    paper = papers.issue(kind="descent-sheet", subject=item, party=make_party(), role="registrar", **more)
    return papers.path_of(paper).read_bytes()


def long_chain(length: int):
    """Copy of a copy of a copy: each piece made of the one before."""
    kinds = [("mould", "moulding"), ("shell", "deposit"), ("copy", "making_up")]
    chain = [make_item("OVM.1931.0044", title="Portrait medal of Maud Ferrigan")]
    chain += [make_item(f"N.{n}", kind=kinds[n % 3][0], date_words="") for n in range(length - 1)]
    for n, (source, target) in enumerate(pairwise(chain)):
        link(source, target, kinds[n % 3][1])
    return chain


def test_the_sheet_answers_how_many_where_and_what_is_open():
    medal = make_item("OVM.1931.0044", title="Portrait medal of Maud Ferrigan")
    copy = copy_of(medal, "R.2026.1")
    copy.place = make_place("Gallery, case 7")
    copy.save()

    words = text(sheet_of(medal))

    for said in (
        "All that came of OVM.1931.0044", "1 copy is recorded; 2 moulds are recorded.", "Gallery, case 7",
        "Where are the moulds?", "Does the size drift?", "Copies on which no mark is recorded: R.2026.1.",
        "(drawn above)",
    ):  # fmt: skip
        assert said in words


def test_an_open_end_is_a_question_mark_in_the_drawing_and_a_sentence_beneath():
    historic = make_item("R.1889.7", kind="historic_copy")
    link(None, historic, "unknown")
    row = historic.ancestry.get()
    row.source_words = "the medal of 1702, untraced since 1811"
    row.save()
    copy_of(historic, "R.2026.3")

    words = text(sheet_of(historic))

    assert "? the medal of 1702, untraced since 1811" in words
    assert "What R.1889.7 was made from, or how, is not recorded." in words


def test_the_tree_is_drawn_in_lines_and_letters_without_any_picture():
    medal = make_item("OVM.1931.0044")
    copy_of(medal, "R.2026.1")

    (page, *_) = PdfReader(BytesIO(sheet_of(medal))).pages

    assert "/XObject" not in page["/Resources"]
    assert page.get_contents().get_data().count(b" l ") >= 7  # an upright and an arm for each of the pieces


def test_two_hundred_pieces_run_over_pages_and_each_page_says_what_it_hangs_from():
    chain = long_chain(200)

    pdf = sheet_of(chain[0])

    found = pages(pdf)
    assert all(any(thing.number in page for page in found) for thing in chain)
    cut = [page for page in found if "(from N." in page]
    assert len(cut) >= 7
    assert "66 copies are recorded; 67 moulds are recorded." in found[0]


def test_it_is_printed_on_letter_as_on_a4():
    medal = make_item("OVM.1931.0044")
    copy_of(medal, "R.2026.1")

    assert [round(each) for each in size(sheet_of(medal, page_size="Letter"))] == [612, 792]
    assert [round(each) for each in size(sheet_of(medal))] == [595, 842]


def test_it_is_issued_from_the_page_of_the_piece(client):
    client.force_login(make_user("registrar"))
    copy_of(make_item("OVM.1931.0044"), "R.2026.1")
    assert "Descent sheet" in client.get("/things/OVM.1931.0044/").content.decode()

    client.post("/papers/issue/descent-sheet/R.2026.1/", {"page_size": "A4"})

    assert Document.objects.get().title == "Descent sheet, copy R.2026.1"


def test_a_page_of_two_hundred_pieces_asks_few_questions(client):
    client.force_login(make_user("registrar"))
    long_chain(200)

    with CaptureQueriesContext(connection) as asked:
        page = client.get("/things/OVM.1931.0044/family/").content.decode()

    assert page.count("tree-node") == 200
    assert len(asked) < 15
