"""A guided examination of a piece of which nobody knows whether it is a copy."""

import pytest
from django.core.exceptions import ValidationError
from django.test import Client
from django.urls import reverse

from records.models import Examination
from records.telling import SIGNS
from tests.factories import make_item, make_party, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def conservator(client: Client) -> Client:
    client.force_login(make_user("conservator"))
    return client


def sent(**answers: str) -> dict[str, str]:
    examiner = make_party().name
    return dict.fromkeys(SIGNS, "unchecked") | {"examined_on": "2026-03-04", "examiner": examiner} | answers


def test_seen_seam_ends_in_the_sentence_for_an_electrotype(conservator):
    item = make_item("OVM.1920.7")

    page = conservator.post(reverse("examination_add", args=["OVM.1920.7"]), sent(seam="seen"), follow=True)

    assert "very probably a copy made so" in page.content.decode()
    assert item.examinations.get().answers["seam"] == "seen"


def test_nothing_checked_says_nothing(conservator):
    make_item("OVM.1920.7")

    page = conservator.post(reverse("examination_add", args=["OVM.1920.7"]), sent(), follow=True)

    assert "Too little was looked for" in page.content.decode()


def test_an_answer_that_is_none_comes_back_with_what_was_typed(conservator):
    make_item("OVM.1920.7")

    page = conservator.post(reverse("examination_add", args=["OVM.1920.7"]), sent(seam="perhaps", note="a line"))

    assert page.status_code in (200, 422)
    assert "a line" in page.content.decode()
    assert not Examination.objects.exists()


def test_corrected_answers_change_the_sentence_and_keep_the_history(conservator):
    row = Examination.objects.create(
        item=make_item(), examined_on="2026-03-04", examiner=make_party(), answers={"seam": "seen"}
    )

    conservator.post(reverse("examination_edit", args=[row.pk]), sent(legend="seen", version=str(row.version)))
    row.refresh_from_db()

    assert row.conclusion.key == "doubtful"
    assert row.history.count() == 2


def test_a_day_ahead_is_refused(conservator):
    make_item("OVM.1920.7")

    page = conservator.post(reverse("examination_add", args=["OVM.1920.7"]), sent(examined_on="2099-01-01"))

    assert not Examination.objects.exists()
    assert "2099" in page.content.decode()


def test_unknown_signs_are_refused_by_the_model():
    row = Examination(item=make_item(), examined_on="2026-03-04", examiner=make_party(), answers={"smell": "seen"})

    with pytest.raises(ValidationError, match="seen, not seen or not checked"):
        row.full_clean()


def test_reader_looks_and_may_not_write(client):
    client.force_login(make_user("reader"))
    item = make_item("OVM.1920.7")

    assert client.get(reverse("examination_list", args=[item.number])).status_code == 200
    assert client.get(reverse("examination_add", args=[item.number])).status_code == 403
