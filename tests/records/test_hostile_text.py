"""Text and numbers that were sent to do harm come back as text, with a sentence."""

import pytest
from django.urls import reverse

from tests.factories import make_item, make_report, make_term, make_user

pytestmark = pytest.mark.django_db
SCRIPT = "<script>xss()</script>"
HUGE = "9" * 24


def test_the_light_of_the_last_report_is_text_in_the_help_of_the_next(client):
    item = make_item()
    make_report(item, light=SCRIPT)
    client.force_login(make_user("conservator"))

    page = client.get(reverse("condition_add", args=[item.number])).content.decode()

    assert SCRIPT not in page and "&lt;script&gt;" in page


def test_a_place_in_a_list_beyond_every_number_begins_at_the_beginning(client):
    client.force_login(make_user("conservator"))

    assert client.get(reverse("party_list") + f"?after={HUGE}").status_code == 200
    assert client.get(reverse("document_list") + f"?after={HUGE}").status_code == 200
    assert client.get(reverse("duty_list") + f"?after=2026-01-01~{HUGE}").status_code == 200


def test_a_chosen_record_beyond_every_number_is_no_choice(client):
    client.force_login(make_user("registrar"))
    form = {"purpose": make_term("purpose", "exhibition").pk, "originals": HUGE, "requester": HUGE}

    answer = client.post(reverse("commission_add"), form)

    assert answer.status_code in {400, 422}  # SQLite cannot even ask for it; PostgreSQL does not find it
