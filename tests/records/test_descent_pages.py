"""The line of descent on a thing's page, and the steps written by hand."""

from itertools import pairwise

import pytest
from django.test import Client

from records.lineage import descent_of, links_both, made_from
from records.models import DescentLink, Item
from tests.factories import make_item, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def curator(client: Client) -> Client:
    client.force_login(make_user("curator"))
    return client


def link(source: Item | None, target: Item, transfer: str, side: str = "") -> DescentLink:
    return DescentLink.objects.create(source=source, target=target, transfer=transfer, side=side)


def copy_of(model: Item, number: str) -> Item:
    """Two moulds, two shells, one copy joined of them."""
    copy = make_item(number, kind="copy", status="workshop", date_words="2026")
    for side in ("obverse", "reverse"):
        mould, shell = make_item(kind="mould", date_words=""), make_item(kind="shell", date_words="")
        link(model, mould, "moulding", side)
        link(mould, shell, "deposit", side)
        link(shell, copy, "making_up")
    return copy


def test_joined_copy_of_an_original_is_first_generation():
    copy = copy_of(make_item("OVM.1931.0044"), "R.2026.1")

    found = descent_of(copy)

    assert (found.lineage.generation, found.lineage.transfer_count, found.words) == (1, 2, "first generation")
    assert found.model.number == "OVM.1931.0044"
    assert [len(column["nodes"]) for column in found.columns] == [1, 2, 2, 1]


def test_copy_of_a_historic_copy_is_at_least_second_and_the_first_link_stays_unknown():
    historic = make_item("R.1889.7", kind="historic_copy", date_words="before 1889")
    link(None, historic, "unknown")
    found = descent_of(copy_of(historic, "R.2026.3"))

    assert found.words == "second generation or more; first link undocumented"
    assert found.model.number == "R.1889.7"
    assert found.columns[0]["nodes"][0]["unknown"]


@pytest.mark.parametrize("kind", ["historic_copy", "copy", "cast"])
def test_copy_whose_making_nobody_recorded_is_never_taken_for_an_original(kind):
    assert descent_of(make_item(kind=kind)).words == "first generation or more; first link undocumented"


def test_long_chain_costs_one_query(django_assert_num_queries):
    chain = [make_item() for _ in range(40)]
    for source, target in pairwise(chain):
        link(source, target, "moulding")

    with django_assert_num_queries(1):
        up, down = links_both(chain[20])

    assert (len(up), len(down)) == (20, 19)


def test_what_was_made_is_listed_beneath_what_it_came_from():
    model = make_item("OVM.1931.0044", date_words="1624")
    copy_of(model, "R.2026.1")

    steps = made_from(model)

    assert [(step.depth, step.thing.kind) for step in steps] == [
        (1, "mould"), (2, "shell"), (3, "copy"), (1, "mould"), (2, "shell"), (3, "copy"),
    ]  # fmt: skip
    assert [step.repeated for step in steps] == [False] * 5 + [True]


def test_step_to_a_known_model_is_written_by_number_in_any_case(curator):
    make_item("OVM.1931.0044"), make_item("R.1", kind="cast", date_words="")

    answer = curator.post("/things/R.1/descent/new/", {"source": "ovm.1931.0044", "transfer": "casting"})

    assert answer.url == "/things/R.1/"
    assert DescentLink.objects.get().source.number == "OVM.1931.0044"
    assert "OVM.1931.0044" in curator.get("/things/R.1/").content.decode()


def test_unknown_model_is_written_in_words_and_shown_with_a_question_mark(curator):
    make_item("R.1889.7", kind="historic_copy")

    curator.post(
        "/things/R.1889.7/descent/new/", {"transfer": "unknown", "source_words": "The medal of 1702, untraced"}
    )

    page = curator.get("/things/R.1889.7/").content.decode()
    assert "The medal of 1702, untraced" in page and "descent-question" in page


@pytest.mark.parametrize(
    ("sent", "said"),
    [
        ({"source": "Q.9", "transfer": "casting"}, "No thing has the number “Q.9”"),
        ({"source": "R.1", "transfer": "casting"}, "cannot descend from itself"),
        ({"transfer": "casting"}, "if nobody knows, say below what is known"),
        ({"source": "OVM.1", "transfer": "casting", "source_words": "a medal"}, "The model has a number above"),
        ({"source": "OVM.1", "transfer": "wizardry"}, "wizardry"),
        ({"source": "OVM.1", "transfer": "casting", "happened_on": "2999-01-01"}, "has not come yet"),
        ({"source": "OVM.1", "transfer": "moulding"}, "recorded already"),
        ({"source": "R.2", "transfer": "casting"}, "made from themselves"),
        ({"source": "OVM.1990", "transfer": "casting"}, "A copy cannot be older than its model"),
    ],
)
def test_step_that_cannot_be_is_refused_with_the_reason(curator, sent, said):
    model = make_item("OVM.1", date_words="")
    piece = Item.objects.create(
        number="R.1", kind="cast", title="Cast", date_words="before 1889", date_latest="1888-12-31"
    )
    Item.objects.create(number="OVM.1990", kind="original", title="New", date_words="1990", date_earliest="1990-01-01")
    link(model, piece, "moulding")
    link(piece, make_item("R.2", kind="cast", date_words=""), "casting")

    answer = curator.post("/things/R.1/descent/new/", {"note": "kept words"} | sent)

    page = answer.content.decode()
    assert answer.status_code == 422
    assert said in page and 'value="kept words"' in page
    assert DescentLink.objects.count() == 2


def test_wrong_step_is_corrected(curator):
    make_item("OVM.2")
    step = link(make_item("OVM.1"), make_item("R.1", kind="cast", date_words=""), "casting")
    assert 'value="OVM.1"' in curator.get(f"/descent/{step.pk}/edit/").content.decode()

    curator.post(f"/descent/{step.pk}/edit/", {"source": "OVM.2", "transfer": "casting", "version": "0"})

    step.refresh_from_db()
    assert step.source.number == "OVM.2"


def test_technician_may_not_write_descent_by_hand(client):
    make_item("R.1")
    client.force_login(make_user("technician"))

    assert client.get("/things/R.1/descent/new/").status_code == 403


def test_provenance_keeps_a_doubtful_date_as_doubtful(curator):
    item = make_item("R.1")

    curator.post("/things/R.1/provenance/new/", {"date_words": "before 1811", "what": "In the mill's counting-house"})

    event = item.provenance.get()
    assert (event.date_earliest, str(event.date_latest)) == (None, "1810-12-31")
    assert "counting-house" in curator.get("/things/R.1/").content.decode()


def test_provenance_without_a_readable_date_comes_back(curator):
    make_item("R.1")

    answer = curator.post("/things/R.1/provenance/new/", {"date_words": "long ago", "what": "Bought"})

    assert answer.status_code == 422
    assert 'value="Bought"' in answer.content.decode()
