"""Fields in which a thing is called by its number instead of chosen out of thousands."""

import pytest
from django.urls import reverse

from records.forms.lookup import LookupField, LookupListField
from records.lookups import MOST
from records.models import Commission, Duty
from tests.factories import make_commission, make_item, make_party, make_term, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def registrar(client):
    client.force_login(make_user("registrar"))
    return client


def asked_for(originals: str) -> dict:
    return {
        "number": "RQ-2026-001", "requested_on": "2026-01-19", "requester": make_party().name,
        "purpose": make_term("purpose", "handling").pk, "originals": originals, "quantity_count": "2",
        "place_of_use": "the schoolroom",
    }  # fmt: skip


def test_numbers_are_read_apart_by_commas_and_lines_whatever_their_capitals_and_spaces(registrar):
    medal, coin, plaque = make_item("OVM.1931.0044"), make_item("L.2026.003"), make_item("Nr. 7, b")

    registrar.post(reverse("commission_add"), asked_for(" ovm.1931. 0044, l.2026.003 ;\n nr. 7,  B\n"))

    assert set(Commission.objects.get().originals.all()) == {medal, coin, plaque}


def test_numbers_that_are_not_there_are_named_and_all_that_was_typed_is_kept(registrar):
    make_item("OVM.1931.0044", title="Tide-mill medal")

    answer = registrar.post(reverse("commission_add"), asked_for("OVM.1931.0044, OVM.9, tide"))

    page = answer.content.decode()
    assert answer.status_code == 422 and not Commission.objects.exists()
    assert "“OVM.9” nor “tide”" in page and "the schoolroom" in page
    assert "OVM.1931.0044, OVM.9, tide</textarea>" in page
    assert "Is it one of these?" in page and "Tide-mill medal" in page


def test_a_thing_that_cannot_stand_here_is_told_from_one_that_is_not_there(registrar):
    make_item("M-2026-01", kind="mould")

    page = registrar.post(reverse("commission_add"), asked_for("m-2026-01")).content.decode()

    assert "M-2026-01 cannot stand here: a copy is asked of originals and of copies." in page


def test_what_is_chosen_stands_beneath_with_its_title(registrar):
    make_item("OVM.1931.0044", title="Tide-mill medal")

    page = registrar.get(reverse("commission_add") + "?original=OVM.1931.0044").content.decode()

    assert "OVM.1931.0044</textarea>" in page and "Tide-mill medal" in page


def test_a_duty_stands_at_a_thing_and_a_commission_by_their_numbers(registrar):
    medal, file = make_item("OVM.1931.0044"), make_commission("RQ-2026-002")
    form = {"sentence": "Ask", "due_on": "2026-03-01", "role": "registrar", "item": "ovm.1931.0044"}

    registrar.post(reverse("duty_add"), form | {"commission": "rq-2026-002"})

    assert Duty.objects.get().item == medal and Duty.objects.get().commission == file


def test_while_typing_few_that_fit_are_offered(registrar):
    for serial in range(MOST + 5):
        make_item(f"OVM.1931.{serial:04d}", title="Bridge token")

    asked = {"name": "originals", "several": "1", "originals": "OVM.1931.0001, bridge"}
    page = registrar.get(reverse("lookup", args=["originals"]), asked).content.decode()

    assert page.count("<button") == MOST
    assert page.index("OVM.1931.0001") < page.index("Is it one of these?")


def test_what_is_picked_takes_the_place_of_what_was_being_typed(registrar):
    make_item("OVM.1931.0001"), make_item("OVM.1931.0002")
    asked = {"name": "originals", "several": "1", "originals": "OVM.1931.0001, brid", "pick": "OVM.1931.0002"}

    page = registrar.get(reverse("lookup", args=["originals"]), asked).content.decode()

    assert "OVM.1931.0001,OVM.1931.0002</textarea>" in page.replace(", ", ",")


def test_a_list_that_is_none_and_a_name_that_is_no_name_are_not_found(registrar):
    assert registrar.get(reverse("lookup", args=["nothing"]), {"name": "a"}).status_code == 404
    assert registrar.get(reverse("lookup", args=["things"]), {"name": '"><script>'}).status_code == 404
    assert registrar.get(reverse("lookup", args=["things"])).status_code == 404


def test_an_unchanged_number_is_no_change():
    medal = make_item("OVM.1931.0044")

    assert not LookupField("things").has_changed(medal.pk, "OVM.1931.0044")
    assert not LookupListField("things").has_changed([medal], "OVM.1931.0044")
    assert LookupField("things").has_changed(None, "OVM.1931.0044")
