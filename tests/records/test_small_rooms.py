"""Parties, places, words, duties and the home page."""

from datetime import date

import pytest
from django.urls import reverse

from records.models import Duty, Party, Place, Term
from tests.factories import make_item, make_place, make_user

pytestmark = pytest.mark.django_db


def test_registrar_enters_a_party_and_sees_its_page(client):
    client.force_login(make_user("registrar"))

    answer = client.post(
        reverse("party_add"), {"name": "Thornwick Almshouse Trust", "kind": "institution"}, follow=True
    )

    assert "Thornwick Almshouse Trust" in answer.content.decode()
    assert Party.objects.filter(name="Thornwick Almshouse Trust", kind="institution").exists()


def test_reader_may_not_enter_a_party_and_is_told_whose_task_it_is(client):
    client.force_login(make_user("reader"))

    answer = client.get(reverse("party_add"))

    assert answer.status_code == 403
    assert "registrar" in answer.content.decode()


def test_a_party_named_twice_comes_back_with_what_was_typed(client):
    client.force_login(make_user("registrar"))
    Party.objects.create(name="Greyling Street Platers")

    answer = client.post(
        reverse("party_add"), {"name": "Greyling Street Platers", "kind": "workshop", "function": "silver skin"}
    )

    page = answer.content.decode()
    assert answer.status_code == 422
    assert "is taken" in page and "silver skin" in page


def test_a_place_cannot_lie_inside_itself(client):
    client.force_login(make_user("registrar"))
    case = make_place("Case 4")
    shelf = Place.objects.create(name="Upper shelf", within=case)

    answer = client.post(reverse("place_edit", args=[case.pk]), {"name": "Case 4", "within": shelf.name, "version": 0})

    assert answer.status_code == 422
    assert "inside itself" in answer.content.decode()


def test_place_page_lists_what_is_kept_there(client):
    client.force_login(make_user("reader"))
    case = make_place("Case 4")
    make_item("R.2026.1", place=case)

    assert "R.2026.1" in client.get(case.get_absolute_url()).content.decode()


def test_a_word_is_added_to_its_scheme(client):
    client.force_login(make_user("conservator"))

    client.post(
        reverse("term_add"),
        {
            "scheme": "finding",
            "group": "any object",
            "label": "blue stain",
            "definition": "Blue area.",
            "pattern": "plain",
        },
    )

    assert Term.objects.get(label="blue stain").scheme == "finding"


def test_vocabulary_page_answers_an_unknown_scheme_with_findings(client):
    client.force_login(make_user("reader"))

    assert "dent" in client.get(reverse("vocabulary_list"), {"scheme": "nonsense"}).content.decode()


def test_a_duty_is_written_off_with_how_it_was_done(client):
    registrar = make_user("registrar")
    client.force_login(registrar)
    duty = Duty.objects.create(sentence="Destroy the moulds", due_on=date(2026, 4, 30), role="registrar")

    client.post(reverse("duty_done", args=[duty.pk]), {"on": "2026-04-17", "words": "before a witness of the Trust"})

    duty.refresh_from_db()
    assert (duty.done_on, duty.done_words, duty.done_by) == (
        date(2026, 4, 17),
        "before a witness of the Trust",
        registrar.party,
    )


def test_a_duty_can_be_written_off_by_the_role_it_falls_to_and_by_no_other(client):
    duty = Duty.objects.create(sentence="Look at the mask again", due_on=date(2026, 4, 30), role="technician")
    address = reverse("duty_done", args=[duty.pk])
    told = {}
    for role in ("technician", "curator"):
        client.force_login(make_user(role))
        told[role] = client.get(address).status_code, address in client.get(reverse("duty_list")).content.decode()

    assert told == {"technician": (200, True), "curator": (403, False)}


def test_home_tells_the_order_of_the_work_until_something_is_entered(client):
    client.force_login(make_user("registrar"))

    empty = client.get(reverse("home")).content.decode()
    make_item("OVM.1")
    begun = client.get(reverse("home")).content.decode()

    assert "Nothing is entered yet" in empty and "The order of the work" in empty
    assert "Nothing is waiting for you" in begun and "The order of the work" not in begun


def test_home_lists_the_duties_of_ones_own_role_only(client):
    Duty.objects.create(sentence="Renew the consent", due_on=date(2026, 4, 30), role="registrar")
    Duty.objects.create(sentence="Look at the mask again", due_on=date(2026, 4, 30), role="conservator")
    client.force_login(make_user("registrar"))

    page = client.get(reverse("home")).content.decode()

    assert "Renew the consent" in page
    assert "Look at the mask again" not in page


@pytest.mark.parametrize("role", ["registrar", "conservator", "technician", "curator", "reader"])
def test_home_answers_every_role(client, role):
    client.force_login(make_user(role))

    assert client.get(reverse("home")).status_code == 200


def test_duties_are_paged_in_the_order_in_which_they_fall_due(client):
    client.force_login(make_user("reader"))
    days = [date(2027, 1, 1 + number // 3) for number in range(60)]
    for number, day in enumerate(reversed(days)):
        Duty.objects.create(sentence=f"Duty {number:02d}", due_on=day, role="registrar")

    first = client.get(reverse("duty_list")).context["page"]
    second = client.get(reverse("duty_list"), {"after": first.next_key}).context["page"]

    assert [duty.due_on for duty in first.rows + second.rows] == days
    assert second.next_key is None


def test_a_page_address_that_was_tampered_with_begins_at_the_beginning(client):
    client.force_login(make_user("reader"))
    Duty.objects.create(sentence="Renew the consent", due_on=date(2026, 4, 30), role="registrar")

    for after in ("nonsense", "2026-99-99~1", "~", "2026-04-01~x", "a~b~c"):
        assert "Renew the consent" in client.get(reverse("duty_list"), {"after": after}).content.decode()
