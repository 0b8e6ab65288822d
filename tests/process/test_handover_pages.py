"""Copies in other hands through the pages: typed words come back, closed gates say what to do, overdue pieces call."""

from datetime import timedelta

import pytest
from django.urls import reverse

from records import clock
from records.models import Handover, Item, Term, UnmetGate
from records.services.permissions import give_concession
from tests.factories import make_consent, make_handover, make_party, make_term, make_user
from tests.process.leaving_copies import certify, copy, marked

__all__ = ["copy", "marked"]  # fixtures

pytestmark = pytest.mark.django_db


@pytest.fixture
def registrar(client):
    client.force_login(make_user("registrar", "ines"))
    return client


def agreed(**more):
    return {
        "number": "H-2026-001", "kind": "loan", "party": "Town Gallery", "purpose": "an exhibition",
        "agreed_on": clock.today(), "due_on": clock.today() + timedelta(days=30),
        "described_as": "Electrotype copy, 2026", "serves": Term.objects.get(label="display surrogate").pk,
    } | more  # fmt: skip


@pytest.fixture(autouse=True)
def display():
    return make_term("purpose", "display surrogate")


def handed(row, **more):
    return {
        "out_on": clock.today(), "handed_by": "Ines", "condition_out": "sound",
        "mass_out_g": "64.71", "mass_out_g_unit": "g", "mass_out_g_kind": "measured", "receiver": "A. Receiver",
        "acknowledged_on": clock.today(), "version": row.version,
    } | more  # fmt: skip


def test_a_loan_from_agreement_to_return(registrar, marked):
    make_party("Town Gallery", kind="institution")
    certify(marked)

    answer = registrar.post(reverse("handover_add", args=["R.2026.1"]), agreed())
    row = Handover.objects.get()
    assert answer.status_code == 302 and answer["Location"] == row.get_absolute_url()
    assert "Hand R.2026.1 to Town Gallery" in registrar.get("/").content.decode()

    answer = registrar.post(reverse("handover_out", args=[row.number]), handed(row))
    assert answer.status_code == 302, answer.context["form"].errors
    row.refresh_from_db()
    assert row.mass_out_g == 64.71 and row.receiver == "A. Receiver"
    assert "out, due back" in registrar.get(reverse("item", args=["R.2026.1"])).content.decode()

    back = {
        "back_on": clock.today(), "taken_back_by": "Ines", "condition_back": "scratched at 3 h",
        "mass_back_g": "64.31", "mass_back_g_unit": "g", "mass_back_g_kind": "measured", "change": "none",
        "version": row.version,
    }  # fmt: skip
    refused = registrar.post(reverse("handover_back", args=[row.number]), back)
    assert refused.status_code == 422 and "correct one of the two" in refused.content.decode()
    assert "scratched at 3 h" in refused.content.decode()
    assert registrar.post(reverse("handover_back", args=[row.number]), back | {"change": "changed"}).status_code == 302
    row.refresh_from_db()
    assert row.back_on == clock.today() and row.change == "changed"


def test_an_unmarked_copy_does_not_leave_through_the_page(registrar, copy):
    certify(copy)
    row = make_handover(copy, due_on=clock.today() + timedelta(days=9))

    answer = registrar.post(reverse("handover_out", args=[row.number]), handed(row))

    assert answer.status_code == 422 and "does not leave the house" in answer.content.decode()
    assert Handover.objects.get().out_on is None


def test_a_closed_gate_names_the_concession_that_could_pass_it(registrar, marked):
    row = make_handover(marked, due_on=clock.today() + timedelta(days=9))

    answer = registrar.post(reverse("handover_out", args=[row.number]), handed(row))

    assert answer.status_code == 422 and "No certificate of reproduction" in answer.content.decode()
    registrar.post(reverse("handover_out", args=[row.number]), handed(row, afterwards="1"))
    assert Handover.objects.get().out_on and UnmetGate.objects.filter(check_name="certificate issued").exists()


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ({"due_on": ""}, "nobody asks for it"),
        ({"kind": "gift"}, "nothing comes back"),
        ({"serves": ""}, "Say what it serves as there"),
        ({"kind": "sale", "due_on": ""}, "A sale has its price"),
        ({"described_as": ""}, "beginning with the kind of copy"),
        ({"described_as": "The original medal"}, "Begin with “Electrotype copy”"),
        ({"value_money": "900", "value_money_unit": "¤"}, "what the sum is in"),
        ({"value_money": "900", "value_money_unit": "¤", "currency": "E" * 40}, "At most 12 characters"),
        ({"value_money": "-1", "value_money_unit": "¤"}, "Less than nothing"),
        ({"value_money": "1e12", "value_money_unit": "¤"}, "is possible here"),
        ({"party": "Nobody"}, "Nobody"),
        ({"agreed_on": "2099-01-01"}, "has not come yet"),
    ],
)
def test_what_cannot_be_agreed_comes_back_with_what_to_do(registrar, marked, more, said):
    make_party("Town Gallery", kind="institution")

    answer = registrar.post(reverse("handover_add", args=["R.2026.1"]), agreed(**more))

    assert answer.status_code == 422 and said in answer.content.decode()
    assert not Handover.objects.exists()


def test_what_is_overdue_stands_on_the_home_page(registrar, marked):
    past = clock.today() - timedelta(days=3)
    make_handover(marked, party=make_party("Town Gallery"), out_on=past, due_on=past, agreed_on=past)

    home = registrar.get("/").content.decode()

    assert "Overdue: ask for R.2026.1 back from Town Gallery" in home
    assert "overdue since" in registrar.get(reverse("handover_list")).content.decode()
    assert "R.2026.1" in registrar.get(reverse("handover_list"), {"export": "csv"}).getvalue().decode()


def test_limits_must_have_been_told(registrar, marked):
    give_concession(
        gate="G7", check_names=["inspected"], items=[marked], given_by=make_party(), role="conservator",
        reason="layers part", limits_of_use="Display only, no handling",
    )  # fmt: skip
    certify(marked)
    row = make_handover(marked, due_on=clock.today() + timedelta(days=9))

    refused = registrar.post(reverse("handover_out", args=[row.number]), handed(row))
    assert refused.status_code == 422 and "Display only, no handling" in refused.content.decode()
    answer = registrar.post(reverse("handover_out", args=[row.number]), handed(row, limits_told="on"))
    assert answer.status_code == 302


def test_hands_on_a_copy_are_asked_of_the_consents_and_kept_when_they_were_on_it(registrar, marked):
    make_consent(Item.objects.get(number="OVM.1931.0044"), purposes=["display surrogate"])
    sent = {"happened_on": clock.today(), "time_h": "2", "time_h_unit": "h", "occasion": "touch table",
            "supervised_by": make_party("Odalys F", kind="person").name}  # fmt: skip
    page = reverse("handling_add", args=["R.2026.1"])

    refused = registrar.post(page, sent)
    assert refused.status_code == 422 and "R.2026.1 is touched; purpose: handling." in refused.content.decode()
    assert not marked.handling.exists()
    registrar.post(page, sent | {"afterwards": "1"})

    assert marked.handling.get().time_h == 2
    assert UnmetGate.objects.get().check_name == "consent: purpose"


def test_a_loan_that_the_consent_bars_is_refused_on_the_page_with_its_sentence(registrar, marked):
    make_consent(Item.objects.get(number="OVM.1931.0044"), purposes=["record of a decaying original"])
    make_party("Town Gallery", kind="institution")

    answer = registrar.post(reverse("handover_add", args=["R.2026.1"]), agreed())

    assert answer.status_code == 422 and "Only for: record of a decaying original." in answer.content.decode()
    assert "Town Gallery" in answer.content.decode() and not Handover.objects.exists()


def test_handling_is_logged_in_hours(registrar, marked):
    who = make_party("Odalys F", kind="person")
    sent = {"happened_on": clock.today(), "time_h": "90", "time_h_unit": "min", "occasion": "touch table",
            "supervised_by": who.name}  # fmt: skip

    assert registrar.post(reverse("handling_add", args=["R.2026.1"]), sent).status_code == 302

    assert marked.handling.get().time_h == 1.5
    assert "Handled in 1 session" in registrar.get(reverse("item", args=["R.2026.1"])).content.decode()
