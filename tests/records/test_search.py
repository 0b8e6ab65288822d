"""Search over numbers, titles, makers and marks; and paging by keyset."""

from html import unescape

import pytest
from django.test import Client, RequestFactory

from records.lookups import LOOKUPS
from records.models import Item
from records.views.listing import page
from tests.factories import make_commission, make_item, make_party, make_report, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def reader(client: Client) -> Client:
    client.force_login(make_user("reader"))
    return client


def found(client: Client, typed: str) -> str:
    return client.get("/search/", {"q": typed}).content.decode()


def test_whole_number_goes_straight_to_the_page_in_any_case(reader):
    make_item("OVM.1931.0044")

    assert reader.get("/search/", {"q": " ovm.1931.0044 "}).url == "/things/OVM.1931.0044/"


def test_number_of_another_record_goes_straight_there_too(reader):
    report = make_report(make_item(), number="CR-2026-01")

    assert reader.get("/search/", {"q": "cr-2026-01"}).url == f"/condition/{report.number}/"


def test_words_are_found_without_accents_and_by_the_trade_s_other_words(reader):
    make_item("A.1", title="Médaille d'Ostrel", maker="Corvin Aldersey")
    make_item("M-1", kind="mould", title="Mould, obverse")

    assert "A.1" in found(reader, "medaille aldersey")
    assert "M-1" in found(reader, "mold")


@pytest.mark.parametrize("written", ["d'Ostrel", "d’Ostrel"])
@pytest.mark.parametrize("typed", ["d'ostrel", "d’ostrel"])
def test_either_apostrophe_finds_the_other(reader, written, typed):
    make_item("A.1", title=f"Médaille {written}")
    make_party(name=f"Museum {written}")

    assert "A.1" in found(reader, typed)
    assert f"Museum {written}" in unescape(reader.get("/parties/", {"q": typed}).content.decode())
    assert [row.name for row in LOOKUPS["parties"].suggest(typed)] == [f"Museum {written}"]
    assert LOOKUPS["parties"].named([f"museum {typed}"])


def test_text_of_a_mark_finds_its_piece(reader):
    make_item("R.2026.1", kind="copy").marks.create(text="COPY · OVM", face="edge", method="punch")

    assert "R.2026.1" in found(reader, "copy ovm")


def test_other_records_are_found_by_number_and_name(reader):
    make_commission("RQ-2026-001", requester=make_party(name="Marl Hill Schools"))

    assert "RQ-2026-001" in found(reader, "marl hill")
    assert "RQ-2026-001" in found(reader, "RQ-2026")


@pytest.mark.parametrize("typed", ["", "   ", "%", "_", "'; drop table", "x" * 5000, "<script>", "ß ﬁ 漢"])
def test_strange_words_find_nothing_and_break_nothing(reader, typed):
    make_item("A.1")

    answer = reader.get("/search/", {"q": typed})

    assert answer.status_code == 200
    assert "<script>alert" not in answer.content.decode()


def test_fifty_hits_cost_few_queries(reader, django_assert_max_num_queries):
    for number in range(60):
        make_item(f"A.{number:03d}", title="Medal of the mill")

    with django_assert_max_num_queries(15):
        answer = reader.get("/search/", {"q": "mill"}).content.decode()

    assert "A.049" in answer and "A.050" not in answer and "after=A.049" in answer


def test_keyset_pages_meet_without_gap_or_overlap_in_both_directions():
    for number in range(7):
        make_item(f"A.{number}")
    request = RequestFactory().get

    first = page(Item.objects.all(), request("/"), size=3)
    second = page(Item.objects.all(), request("/", {"after": first.next_key}), size=3)
    third = page(Item.objects.all(), request("/", {"after": second.next_key}), size=3)
    last_first = page(Item.objects.all(), request("/"), key="-number", size=3)

    numbers = [row.number for part in (first, second, third) for row in part.rows]
    assert numbers == [f"A.{number}" for number in range(7)]
    assert third.next_key is None
    assert [row.number for row in last_first.rows] == ["A.6", "A.5", "A.4"]


@pytest.mark.parametrize("after", ["nonsense", "1e999"])
def test_tampered_key_begins_at_the_beginning(after):
    item = make_item()

    assert page(Item.objects.all(), RequestFactory().get("/", {"after": after}), key="pk").rows == [item]
