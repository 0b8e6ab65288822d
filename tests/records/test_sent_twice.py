"""A double click sends a form twice: it is acted on once, and answered as the first time."""

import re
from concurrent.futures import ThreadPoolExecutor

import pytest
from django.db import connection
from django.test import Client
from django.urls import reverse

from process.models import Reading
from process.services.copies import accept
from process.services.runs import add_reading
from records import numbers
from records.models import Concession, Item, Measurement
from records.services.permissions import give_concession
from tests.factories import NINE, make_copy, make_inspection, make_item, make_mark, make_party, make_run, make_user

MASS = {"what": "mass", "point": "", "amount": "71,36", "amount_unit": "g"}


def shown(client: Client, url: str) -> dict[str, str]:
    """The mark that the form carries when it is shown."""
    return {"sending": re.search(r'name="sending" value="([0-9a-f-]{36})"', client.get(url).content.decode())[1]}


@pytest.fixture
def registrar(client) -> Client:
    client.force_login(make_user("registrar"))
    return client


@pytest.mark.django_db
def test_a_measurement_sent_twice_is_one_and_both_are_led_to_it(registrar):
    url = reverse("measurement_add", args=[make_item("R.1").number])
    typed = MASS | shown(registrar, url)

    first, second = registrar.post(url, typed), registrar.post(url, typed, follow=True)

    assert first.status_code == 302 and first.url.endswith(second.redirect_chain[0][0])
    assert "came twice and is kept once" in second.content.decode()
    assert Measurement.objects.count() == 1


@pytest.mark.django_db
def test_a_numbered_record_sent_twice_is_not_told_that_its_number_is_taken(registrar):
    url = reverse("item_add")
    typed = {"number": "R.7", "kind": "original", "title": "Medal", "status": "accessioned"} | shown(registrar, url)

    answers = [registrar.post(url, typed) for _ in range(2)]

    assert [answer.status_code for answer in answers] == [302, 302] and Item.objects.filter(number="R.7").count() == 1


@pytest.mark.django_db
def test_a_form_gone_back_to_and_changed_is_neither_swallowed_nor_doubled_unasked(registrar):
    url = reverse("measurement_add", args=[make_item("R.1").number])
    typed = MASS | shown(registrar, url)
    registrar.post(url, typed)

    asked = registrar.post(url, typed | {"amount": "71,40"})
    page = asked.content.decode()
    anew = re.search(r'name="sending" value="([0-9a-f-]{36})"', page)[1]
    registrar.post(url, typed | {"amount": "71,40", "sending": anew})

    assert asked.status_code == 422 and "saved already, with other words" in page and "71,40" in page
    assert sorted(Measurement.objects.values_list("mass_g", flat=True)) == [71.36, 71.4]


@pytest.mark.django_db(transaction=True)
def test_two_clicks_in_the_same_moment_are_one_concession():
    user, medal = make_user("conservator"), make_item("R.1889.7")
    client, url = Client(), reverse("concession_add")
    client.force_login(user)
    typed = {"check_names": ["G2:risk assessed"], "items": medal.number, "reason": "wax"} | shown(client, url)

    def click(_: int) -> int:
        try:
            one = Client()
            one.force_login(user)
            return one.post(url, typed).status_code
        finally:
            connection.close()

    with ThreadPoolExecutor(4) as pool:
        assert list(pool.map(click, range(4))) == [302] * 4
    assert Concession.objects.count() == 1


@pytest.mark.django_db(transaction=True)
def test_four_concessions_in_the_same_moment_get_four_numbers():
    medal, party = make_item(), make_party()

    def give(_: int) -> str:
        try:
            return give_concession(
                gate="G2", check_names=["risk assessed"], items=[medal], given_by=party, role="conservator", reason="x"
            ).number
        finally:
            connection.close()

    with ThreadPoolExecutor(4) as pool:
        assert len(set(pool.map(give, range(4)))) == 4


@pytest.mark.django_db
def test_a_number_taken_meanwhile_is_tried_again_under_the_next(monkeypatch):
    make_item("R.2026.1")
    offered = iter(["R.2026.1", "R.2026.2"])  # the first was free when it was asked for
    monkeypatch.setattr(numbers, "next_number", lambda model, pattern: next(offered))

    assert numbers.with_next_number(Item, numbers.SERIES["copy"], make_item).number == "R.2026.2"


@pytest.mark.django_db
def test_a_reading_the_same_in_every_figure_is_not_added_twice():
    run = make_run()
    run.events.create(kind="entry", at=NINE, current_a=0.24)

    first = add_reading(run=run, at=NINE, current_a=1.2, note="")
    again = add_reading(run=run, at=NINE, current_a=1.2, note="")
    other = add_reading(run=run, at=NINE, current_a=1.3, note="")

    assert again.pk == first.pk and again.stood_already and other.pk != first.pk and Reading.objects.count() == 2


@pytest.mark.django_db
def test_accepting_a_copy_does_not_write_over_what_others_wrote_meanwhile():
    copy = make_copy("R.2026.1")
    make_mark(copy)
    inspection = make_inspection(copy)
    stale = type(inspection).objects.select_related("copy").get(pk=inspection.pk)
    other = Item.objects.get(pk=copy.pk)
    other.title = "Corrected by another"
    other.save()

    accept(inspection=stale, party=make_party(), role="conservator", status="accessioned")

    now = Item.objects.get(pk=copy.pk)
    assert (now.title, now.status) == ("Corrected by another", "accessioned")
