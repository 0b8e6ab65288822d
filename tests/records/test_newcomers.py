"""A person, institution or place that nobody entered yet, entered together with the form that names it."""

import pytest
from django.urls import reverse

from records.models import Commission, Item, Party, Place
from tests.factories import make_item, make_party, make_place, make_term, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def registrar(client):
    client.force_login(make_user("registrar"))
    return client


def thing(**changes) -> dict:
    return {"number": "OVM.1", "kind": "original", "title": "Portrait medal", "status": "accessioned"} | changes


def add(client, **changes):
    return client.post(reverse("item_add"), thing(**changes))


def test_an_owner_and_a_place_are_entered_with_the_thing(registrar):
    answer = add(registrar, **{
        "owner": "Aldersey  Trust", "owner-new": "on", "owner-new-kind": "institution",
        "place": "Drawer 12", "place-new": "on",
    })  # fmt: skip

    item = Item.objects.get()
    assert answer.status_code == 302
    assert (item.owner.name, item.owner.kind, item.place.name) == ("Aldersey Trust", "institution", "Drawer 12")
    assert item.owner.history.count() == 1


def test_an_unknown_name_comes_back_with_the_way_to_enter_it(registrar):
    answer = add(registrar, owner="Aldersey Trust", title="Two bridges")

    page = answer.content.decode()
    assert answer.status_code == 422 and not Item.objects.exists()
    assert "No person or institution is called “Aldersey Trust”" in page and "tick that it is a new one" in page
    assert '<details class="fold lookup-new" open>' in page and 'value="Aldersey Trust"' in page
    assert "Two bridges" in page


def test_nothing_is_entered_when_the_form_itself_is_refused(registrar):
    answer = add(registrar, title="", **{"owner": "Aldersey Trust", "owner-new": "on", "owner-new-kind": "person"})

    page = answer.content.decode()
    assert answer.status_code == 422 and not Party.objects.filter(name="Aldersey Trust").exists()
    assert 'id="id_owner-new" checked' in page and '<option value="person" selected>' in page


def test_the_kind_of_a_newcomer_is_asked(registrar):
    answer = add(registrar, **{"owner": "Aldersey Trust", "owner-new": "on"})

    assert answer.status_code == 422 and "Say of which kind" in answer.content.decode()


def test_a_name_that_is_there_is_not_entered_twice(registrar):
    make_party("Aldersey Trust")

    answer = add(registrar, **{"owner": "aldersey trust", "owner-new": "on", "owner-new-kind": "person"})

    assert answer.status_code == 422 and "“Aldersey Trust” is there already" in answer.content.decode()
    assert Party.objects.filter(name__iexact="aldersey trust").count() == 1


def test_only_who_may_write_people_and_places_is_offered_new_ones(client):
    client.force_login(make_user("conservator"))

    blank = client.get(reverse("item_add")).content.decode()
    answer = add(client, **{"owner": "Aldersey Trust", "owner-new": "on", "owner-new-kind": "person"})

    assert "lookup-new" not in blank
    assert answer.status_code == 422 and "is entered by the registrar" in answer.content.decode()
    assert not Party.objects.filter(name="Aldersey Trust").exists()


def test_two_fields_that_name_the_same_newcomer_enter_it_once(registrar):
    item = make_item()
    registrar.post(reverse("commission_add"), {
        "number": "RQ-2026-001", "requested_on": "2026-01-19", "requester": "Greyling School", "requester-new": "on",
        "requester-new-kind": "institution", "purpose": make_term("purpose", "handling").pk,
        "originals": item.number, "quantity_count": "1",
    })  # fmt: skip
    new = {"-new": "on", "-new-kind": "institution"}
    registrar.post(reverse("consent_add", args=["RQ-2026-001"]), {
        "owner": "Aldersey Trust", "given_by": "Aldersey Trust", "given_on": "2026-01-22", "valid_from": "2026-01-22",
        "items": [item.number], "mould_fate": "keep", "techniques": "any",
        **{f"{name}{key}": value for name in ("owner", "given_by") for key, value in new.items()},
    })  # fmt: skip

    consent = Commission.objects.get().consents.get()
    assert consent.owner == consent.given_by == Party.objects.get(name="Aldersey Trust")


def test_people_are_called_by_initials_too_if_no_other_has_them(registrar):
    make_item("OVM.2")
    pell, tobias = make_party("Pell Dunnock", initials="PD"), make_party("Tobias Wren", initials="TW")
    make_party("Piet Dors", initials="PD")
    address = reverse("measurement_add", args=["OVM.2"])
    typed = {"what": "mass", "amount": "71.36", "amount_unit": "g"}

    kept = registrar.post(address, typed | {"measured_by": "tw"})
    doubtful = registrar.post(address, typed | {"measured_by": "PD"})

    assert kept.status_code == 302 and Item.objects.get().measurements.get().measured_by == tobias
    page = doubtful.content.decode()
    assert doubtful.status_code == 422 and "“PD” may be one of several" in page
    assert f'value="{pell.name}"' in page and "Piet Dors" in page


def test_what_is_picked_from_the_list_without_script_takes_the_place_of_what_was_typed(registrar):
    drawer = make_place("Drawer 12, cabinet of medals")

    asked = add(registrar, place="drawer 12")
    picked = add(registrar, **{"place": "drawer 12", "place-wanted": "drawer 12", "place-pick": drawer.name})

    assert f'<input type="radio" name="place-pick" value="{drawer.name}">' in asked.content.decode()
    assert picked.status_code == 302 and Item.objects.get().place == drawer


def test_a_filter_takes_a_place_by_its_name(registrar):
    drawer = make_place("Drawer 12")
    make_item("OVM.3", title="In the drawer", place=drawer)
    make_item("OVM.4", title="Elsewhere")

    page = registrar.get(reverse("item_list"), {"place": "drawer 12"}).content.decode()
    unknown = registrar.get(reverse("item_list"), {"place": "drawer 99"}).content.decode()

    assert "In the drawer" in page and "Elsewhere" not in page
    assert "No place is called “drawer 99”" in unknown and not Place.objects.filter(name="drawer 99").exists()
