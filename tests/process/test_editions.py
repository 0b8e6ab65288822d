"""Editions, counted from facts: copy n of m authorised, k made, j gone (rule of the house; common practice)."""

import pytest

from process.summaries.editions import editions_of
from records.family import edition_of
from records.gates import GateClosed
from records.models import LabelWording
from records.services import papers
from tests.factories import NINE, make_consent, make_copy, make_item, make_mark, make_party, make_user
from tests.pdf.reading import text

pytestmark = pytest.mark.django_db


def words(*copies) -> list[str]:
    return [edition_of(copy) for copy in copies]


def test_the_sum_of_what_the_consents_allow_is_what_is_authorised():
    medal = make_item("OVM.1931.0044")
    make_consent(medal, copies_max_count=1)
    make_consent(medal, copies_max_count=2)

    copies = [make_copy(f"R.2026.{n}", model=medal) for n in (1, 4)]

    assert words(*copies) == ["copy 1 of 3 authorised, 2 made", "copy 2 of 3 authorised, 2 made"]


def test_where_one_consent_says_no_number_none_is_authorised():
    medal = make_item("OVM.1931.0044")
    make_consent(medal, copies_max_count=1)
    make_consent(medal)

    assert words(make_copy("R.2026.1", model=medal)) == ["copy 1 of 1 made; no number authorised"]


def test_copies_of_another_model_are_not_counted():
    make_copy("R.2026.9")
    coin = make_item("L.2026.003")
    make_consent(coin, copies_max_count=1)

    assert words(make_copy("R.2026.2", model=coin)) == ["copy 1 of 1 authorised, 1 made"]


def test_a_destroyed_copy_keeps_its_place_and_is_said_one_kept_as_evidence_never_was_one():
    medal = make_item("OVM.1931.0044")
    make_consent(medal, copies_max_count=3)
    first, second, third = (make_copy(f"R.2026.{n}", model=medal) for n in (1, 2, 3))
    first.status, second.status = "destroyed", "evidence"
    first.save(), second.save()

    assert words(first, second, third) == [
        "copy 1 of 3 authorised, 2 made, 1 lost or destroyed", "",
        "copy 2 of 3 authorised, 2 made, 1 lost or destroyed",
    ]  # fmt: skip


def test_one_more_than_authorised_is_refused_without_a_concession():
    medal = make_item("OVM.1931.0044")
    make_consent(medal, copies_max_count=1)
    make_copy("R.2026.1", model=medal)

    with pytest.raises(GateClosed, match="1 of 1 copy that the owner allows"):
        make_copy("R.2026.2", model=medal)


def test_one_beyond_the_number_recorded_afterwards_is_called_that_everywhere():
    medal = make_item("OVM.1931.0044")
    make_consent(medal, copies_max_count=1)
    make_copy("R.2026.1", model=medal)

    beyond = make_copy("R.2026.2", model=medal, afterwards=True)

    assert words(beyond) == ["copy 2; 1 authorised, 2 made"]


def test_many_copies_cost_one_question(django_assert_num_queries):
    medal = make_item("OVM.1931.0044")
    copies = [make_copy(f"R.2026.{n}", model=medal) for n in range(1, 6)]

    with django_assert_num_queries(1):
        assert len(editions_of([copy.pk for copy in copies])) == 5


@pytest.mark.parametrize("printed", [True, False])
def test_page_and_label_tell_the_edition_the_label_only_where_it_is_asked_to(client, printed):
    client.force_login(make_user("curator"))
    medal = make_item("OVM.1931.0044", object_type="medal")
    make_consent(medal, copies_max_count=2)
    copy = make_copy("R.2026.1", model=medal)
    make_mark(copy)
    LabelWording.objects.create(
        item=copy, kind_of_copy="Electrotype copy", copy_date="2026", after="after a bronze medal, 1624",
        body="Copper.", with_edition=printed, signed_by=make_party(), signed_role="curator", signed_at=NINE,
    )  # fmt: skip

    assert "Copy 1 of 2 authorised, 1 made" in client.get("/things/R.2026.1/").content.decode()
    paper = papers.issue(kind="gallery-label", subject=copy, party=make_party(), role="curator")
    assert ("R.2026.1 · Copy 1 of 2 authorised, 1 made" in text(papers.path_of(paper).read_bytes())) == printed
