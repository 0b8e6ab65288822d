"""How many copies of a piece exist, where they are, where the moulds are: one page for each line of descent."""

import pytest
from django.test import Client
from django.urls import reverse

from records.family import family_of
from tests.factories import make_consent, make_copy, make_item, make_mould, make_place, make_user
from tests.records.test_descent_pages import copy_of, link

pytestmark = pytest.mark.django_db


@pytest.fixture
def reader(client: Client) -> Client:
    client.force_login(make_user("reader"))
    return client


def test_copies_and_moulds_of_an_original_are_counted_with_their_places(reader):
    medal = make_item("OVM.1931.0044", date_words="1624")
    copy = copy_of(medal, "R.2026.1")
    copy.place = make_place("Case 4")
    copy.save()

    family = family_of(medal)

    assert family.sentence == "1 copy is recorded; 2 moulds are recorded."
    assert [(member.item.number, member.where) for member in family.copies] == [("R.2026.1", "Case 4")]
    assert "Case 4" in reader.get(reverse("family", args=["OVM.1931.0044"])).content.decode()


def test_asked_from_a_copy_the_family_begins_with_the_original():
    medal = make_item("OVM.1931.0044", date_words="1624")
    copy_of(medal, "R.2026.1")
    second = copy_of(medal, "R.2026.4")

    family = family_of(second)

    assert [root.item.number for root in family.roots] == ["OVM.1931.0044"]
    assert [member.item.number for member in family.copies] == ["R.2026.1", "R.2026.4"]


def test_undocumented_beginning_is_drawn_as_a_question_mark():
    historic = make_item("R.1889.7", kind="historic_copy", date_words="before 1889")
    link(None, historic, "unknown")
    copy_of(historic, "R.2026.3")

    drawing = family_of(historic).drawing

    assert [node.kind for node in drawing.nodes[:3]] == ["unknown", "positive", "negative"]
    assert not drawing.elbows[0].known


def test_destroyed_copy_stays_counted_as_gone():
    medal = make_item("OVM.1931.0044", date_words="1624")
    copy = copy_of(medal, "R.2026.1")
    copy.status = "destroyed"
    copy.save()
    copy_of(medal, "R.2026.4")

    assert family_of(medal).sentence.startswith("2 copies are recorded, of which 1 is lost or destroyed;")


def test_mould_says_its_uses_its_fate_and_what_the_consent_demands():
    coin = make_item("L.2026.003")
    make_consent(coin, pulls_max_count=2, mould_fate="destroy", mould_fate_by="2026-04-30")
    mould = make_mould(coin, pulls_allowed_count=8)
    link(coin, mould.item, "moulding", "obverse")

    (member,) = family_of(coin).moulds

    assert member.note.uses == "obverse: 0 of 2 pulls"
    assert member.note.due.endswith("by 30 April 2026")


def test_copies_made_here_are_counted_as_an_edition(reader):
    medal = make_item("OVM.1931.0044")
    make_consent(medal, copies_max_count=3)
    make_copy("R.2026.1", model=medal)
    make_copy("R.2026.4", model=medal)

    uses = [member.note.uses for member in family_of(medal).copies]

    assert uses == ["copy 1 of 3 authorised, 2 made", "copy 2 of 3 authorised, 2 made"]


def test_lost_original_flags_its_family(reader):
    medal = make_item("OVM.1931.0044", date_words="1624", status="lost")
    copy_of(medal, "R.2026.1")

    page = reader.get(reverse("family", args=["R.2026.1"])).content.decode()

    assert "what remains of it" in page


def test_list_is_taken_as_a_table(reader):
    copy_of(make_item("OVM.1931.0044", date_words="1624"), "R.2026.1")

    answer = reader.get(reverse("family", args=["OVM.1931.0044"]), {"export": "csv"})
    lines = b"".join(answer.streaming_content).decode().splitlines()

    assert lines[1].startswith("OVM.1931.0044,original")
    assert len(lines) == 5


def test_two_hundred_pieces_cost_a_handful_of_questions(reader, django_assert_max_num_queries):
    medal = make_item("OVM.1931.0044", date_words="1624")
    for count in range(40):
        copy_of(medal, f"R.2026.{count}")

    with django_assert_max_num_queries(12):
        page = reader.get(reverse("family", args=["OVM.1931.0044"]))

    assert page.content.count(b"tree-node") > 200
