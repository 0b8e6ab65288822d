"""The label's page: drafts are kept, refused wordings are not approved, unmarked copies get no label."""

from datetime import date

import pytest
from django.urls import reverse

from records.models import Concession, LabelWording
from tests.factories import make_copy, make_item, make_mark, make_party, make_user

pytestmark = pytest.mark.django_db
GOOD = {
    "kind_of_copy": "Electrotype copy",
    "copy_date": "2026",
    "after": "after a portrait medal, 1624",
    "body": "Copper. The original is OVM.1931.0044.",
}
BAD = GOOD | {"after": "this is the original of 1624"}


@pytest.fixture
def curator(client):
    client.force_login(make_user("curator"))
    return client


@pytest.fixture
def copy():
    return make_copy("R.2026.1", model=make_item("OVM.1931.0044", object_type="medal, portrait medal"))


def _write(client, **words):
    return client.post(reverse("label_edit", args=["R.2026.1"]), GOOD | words)


def _approve(client, **more):
    label = LabelWording.objects.get()
    return client.post(reverse("label_approve", args=["R.2026.1"]), {"version": label.version} | more)


def test_a_new_label_is_offered_composed_from_the_record(curator, copy):
    form = curator.get(reverse("label_edit", args=["R.2026.1"])).context["form"]

    assert (form.initial["kind_of_copy"], form.initial["copy_date"]) == ("Electrotype copy", "2026")
    assert form.fields["kind_of_copy"].choices[1][0] == "true of this piece"


def test_a_wording_is_kept_and_approved_with_name_and_role(curator, copy):
    make_mark(copy)
    _write(curator)

    answer = _approve(curator)

    label = LabelWording.objects.get()
    assert answer.status_code == 302 and (label.is_signed, label.signed_role) == (True, "curator")


def test_a_wording_that_hides_where_the_original_is_needs_an_answer_that_stays_with_the_approval(curator, copy):
    """A label tells the original's owner, number or place, or that it is not known (common practice, from memory)."""
    make_mark(copy)
    _write(curator, body="Copper.")

    unanswered, answered = _approve(curator), _approve(curator, answer="The lender asked for it, letter of 3 March.")

    label = LabelWording.objects.get()
    assert unanswered.status_code == 422 and "Nobody learns where the original is" in unanswered.content.decode()
    assert answered.status_code == 302 and label.is_signed
    assert label.answer == "The lender asked for it, letter of 3 March."


def test_a_refused_wording_is_kept_as_a_draft_and_not_approved(curator, copy):
    make_mark(copy)
    kept = curator.post(reverse("label_edit", args=["R.2026.1"]), BAD, follow=True)

    refused = _approve(curator)

    page = kept.content.decode()
    assert "keep the word for what it repeats" in page and "Approve this wording" not in page
    assert refused.status_code == 422 and "keep the word for what it repeats" in refused.content.decode()
    assert not LabelWording.objects.get().is_signed


def test_an_unmarked_copy_gets_no_approved_label(curator, copy):
    _write(curator)

    answer = _approve(curator)

    page = answer.content.decode()
    assert answer.status_code == 422 and "no permanent, photographed mark" in page
    assert "UNMARKED COPY" in page and 'name="afterwards"' not in page
    assert not LabelWording.objects.get().is_signed


def test_a_concession_stands_for_the_mark(curator, copy):
    given = Concession.objects.create(
        number="C-1",
        gate="G6",
        given_on=date(2026, 2, 24),
        given_by=make_party(),
        given_role="conservator",
        reason="thin",
    )
    given.items.set([copy])
    _write(curator)

    assert _approve(curator).status_code == 302


def test_a_historic_copy_needs_no_mark(curator):
    make_item("R.2026.1", kind="historic_copy", date_words="before 1889", title="Electrotype of a medal")
    _write(
        curator,
        kind_of_copy="Historic electrotype",
        copy_date="before 1889",
        after="the number of steps from the original is not known",
    )

    assert _approve(curator).status_code == 302


def test_changing_an_approved_wording_takes_the_approval_away_and_keeps_the_old(curator, copy):
    make_mark(copy)
    _write(curator)
    _approve(curator)

    _write(curator, body="Copper, patinated.", version=LabelWording.objects.get().version)

    label = LabelWording.objects.get()
    assert not label.is_signed and label.signed_by is None
    assert label.history.filter(signed_at__isnull=False, body__startswith="Copper.").exists()


def test_saving_without_a_change_keeps_the_approval(curator, copy):
    make_mark(copy)
    _write(curator)
    _approve(curator)

    _write(curator, version=LabelWording.objects.get().version)

    assert LabelWording.objects.get().is_signed


def test_a_wording_changed_meanwhile_is_not_approved_unread(curator, copy):
    make_mark(copy)
    _write(curator)

    answer = _approve(curator, version="77")

    assert answer.status_code == 422 and "read it again" in answer.content.decode()


@pytest.mark.parametrize("missing", ["kind_of_copy", "copy_date", "after"])
def test_what_is_missing_is_named_and_the_rest_is_kept(curator, copy, missing):
    answer = _write(curator, **{missing: ""})

    assert answer.status_code == 422 and missing in answer.context["form"].errors
    assert "Copper." in answer.content.decode()


def test_others_read_it_and_may_not_approve_it(client, copy):
    client.force_login(make_user("technician"))
    LabelWording.objects.create(item=copy, **GOOD)

    page = client.get(reverse("label_edit", args=["R.2026.1"]))

    assert page.status_code == 200 and "The curator approves it" in page.content.decode() and "form" not in page.context
    assert _approve(client).status_code == 403


def test_originals_have_no_copy_label(curator):
    make_item("OVM.1")

    assert curator.get(reverse("label_edit", args=["OVM.1"])).status_code == 404


def test_the_page_asks_few_questions(curator, copy, django_assert_max_num_queries):
    make_mark(copy)
    _write(curator)

    with django_assert_max_num_queries(15):
        curator.get(reverse("label_edit", args=["R.2026.1"]))
