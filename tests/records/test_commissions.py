"""Commissions, consents, risk assessments, specifications and concessions."""

from datetime import date

import pytest
from django.urls import reverse

from records.models import Commission, Concession, Consent, Duty, RiskAssessment, Specification
from tests.factories import make_commission, make_consent, make_item, make_party, make_term, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def registrar(client):
    client.force_login(make_user("registrar"))
    return client


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator"))
    return client


def commission_data(*originals, **changes) -> dict:
    return {
        "number": "RQ-2026-001",
        "requested_on": "2026-01-19",
        "requester": make_party().name,
        "purpose": make_term("purpose", "handling").pk,
        "originals": "\n".join(item.number for item in originals),
        "quantity_count": "2",
    } | changes


def consent_data(item, **changes) -> dict:
    owner = make_party()
    return {
        "owner": owner.name,
        "given_by": owner.name,
        "given_on": "2026-01-22",
        "valid_from": "2026-01-22",
        "valid_to": "2026-10-31",
        "items": [item.number],
        "pulls_max_count": "2",
        "copies_max_count": "1",
        "mould_fate": "destroy",
        "mould_fate_by": "2026-04-30",
    } | changes


def test_registrar_logs_a_commission_for_two_copies(registrar):
    medal = make_item()

    page = registrar.post(reverse("commission_add"), commission_data(medal), follow=True).content.decode()

    assert "2 copies of Portrait medal" in page
    assert list(Commission.objects.get().originals.all()) == [medal]


def test_a_commission_needed_before_it_was_asked_for_is_sent_back(registrar):
    answer = registrar.post(reverse("commission_add"), commission_data(make_item(), needed_by="2026-01-01"))

    assert answer.status_code == 422
    assert "needed before it was asked for" in answer.content.decode()


def test_a_commission_for_no_copy_is_sent_back(registrar):
    answer = registrar.post(reverse("commission_add"), commission_data(make_item(), quantity_count="0"))

    assert "whole number from 1" in answer.content.decode()


def test_consent_conditions_with_a_date_become_duties(registrar):
    medal = make_item("L.2026.003")
    commission = make_commission(originals=[medal])

    registrar.post(reverse("consent_add", args=[commission.number]), consent_data(medal))

    assert Consent.objects.get().commissions.get() == commission
    assert set(Duty.objects.values_list("sentence", "due_on")) == {
        ("Destroy the moulds of L.2026.003 before a witness", date(2026, 4, 30)),
        ("The consent for L.2026.003 ends: finish or renew it", date(2026, 10, 31)),
    }


def test_correcting_a_consent_moves_its_open_duties(registrar):
    medal = make_item("L.2026.003")
    registrar.post(reverse("consent_add", args=[make_commission(originals=[medal]).number]), consent_data(medal))
    consent = Consent.objects.get()

    registrar.post(
        reverse("consent_edit", args=[consent.pk]),
        consent_data(medal, items=medal.number, mould_fate_by="2026-05-31", valid_to="", version=consent.version),
    )

    assert list(Duty.objects.values_list("due_on", flat=True)) == [date(2026, 5, 31)]


def test_consent_that_orders_destruction_needs_a_date(registrar):
    medal = make_item()
    commission = make_commission(originals=[medal])

    answer = registrar.post(reverse("consent_add", args=[commission.number]), consent_data(medal, mould_fate_by=""))

    assert answer.status_code == 422
    assert "Say by when the moulds are destroyed" in answer.content.decode()


def test_consent_that_ends_before_it_begins_is_sent_back(registrar):
    medal = make_item()
    commission = make_commission(originals=[medal])

    answer = registrar.post(
        reverse("consent_add", args=[commission.number]), consent_data(medal, valid_to="2025-12-31")
    )

    assert "ends before it begins" in answer.content.decode()


def test_commission_page_says_what_is_missing_and_who_can_supply_it(registrar):
    medal = make_item("OVM.1931.0044")
    commission = make_commission(originals=[medal])

    page = registrar.get(commission.get_absolute_url()).content.decode()

    assert "No consent in force" in page and "Ask the registrar" in page
    assert "No signed risk assessment" in page and "Ask the conservator" in page


def test_risk_is_assessed_and_signed_once(conservator):
    medal = make_item()
    assessor = make_party()
    conservator.post(
        reverse("risk_add", args=[medal.number]),
        {
            "number": "RA-2026-01",
            "assessed_on": "2026-01-30",
            "assessor": assessor.name,
            "surface": "leaded bronze",
            "deterioration": "no",
            "probability_count": "1",
            "consequence_count": "4",
            "decision": "direct",
            "reason": "stable",
        },
    )

    conservator.post(reverse("risk_sign", args=["RA-2026-01"]))
    again = conservator.post(reverse("risk_sign", args=["RA-2026-01"]))

    assert RiskAssessment.objects.get().signed_role == "conservator"
    assert again.status_code == 422 and "Signed already" in again.content.decode()


def test_probability_beyond_five_is_sent_back(conservator):
    medal = make_item()
    data = {"number": "RA-2026-01", "assessed_on": "2026-01-30", "assessor": make_party().name, "surface": "bronze",
            "deterioration": "no", "probability_count": "7", "decision": "direct", "reason": "stable"}  # fmt: skip

    assert "from 1 to 5" in conservator.post(reverse("risk_add", args=[medal.number]), data).content.decode()


def test_specification_asks_for_a_least_thickness_under_the_mean(conservator):
    medal = make_item()
    commission = make_commission(originals=[medal])
    url = reverse("specification_add", args=[commission.number])
    data = {
        "item": medal.number,
        "technique": "hollow",
        "metal_ion": "Cu2+",
        "thickness_mean_mm": "0.6",
        "thickness_mean_mm_unit": "mm",
        "thickness_min_mm": "0.3",
        "thickness_min_mm_unit": "mm",
    }

    wrong = conservator.post(url, data | {"thickness_min_mm": "0.9"})
    conservator.post(url, data)

    assert "cannot exceed the mean" in wrong.content.decode()
    assert Specification.objects.get().thickness_mean_mm == 0.6


def test_a_concession_carries_name_role_and_reason(conservator):
    medal = make_item("R.1889.7")
    data = {
        "check_names": ["G2:risk assessed"],
        "items": medal.number,
        "reason": "seam stopped with wax",
        "limits_of_use": "no heat",
    }

    conservator.post(reverse("concession_add"), data)

    concession = Concession.objects.get()
    assert (concession.given_role, concession.reason) == ("conservator", "seam stopped with wax")
    assert (concession.gate, concession.check_names) == ("G2", ["risk assessed"])
    assert list(concession.items.all()) == [medal]


def test_technician_may_not_give_a_concession(client):
    client.force_login(make_user("technician"))

    assert client.get(reverse("concession_add")).status_code == 403


def test_commission_list_asks_few_questions_of_the_database(registrar, django_assert_max_num_queries):
    medal = make_item()
    for _ in range(50):
        make_consent(medal, commission=make_commission(originals=[medal]))

    with django_assert_max_num_queries(15):
        assert registrar.get(reverse("commission_list")).status_code == 200


def test_commission_page_asks_few_questions_of_the_database(registrar, django_assert_max_num_queries):
    originals = [make_item() for _ in range(4)]
    commission = make_commission(originals=originals)
    for original in originals:
        make_consent(original, commission=commission)
    commission.copies.set([make_item(kind="copy") for _ in range(20)])

    with django_assert_max_num_queries(15):
        assert registrar.get(commission.get_absolute_url()).status_code == 200


def test_permission_is_judged_as_of_the_moulding_not_of_today(registrar):
    medal = make_item("L.2026.003")
    commission = make_commission(originals=[medal])
    make_consent(medal, commission=commission, valid_to=date(2026, 3, 31))
    mould = make_item("M-2026-03", kind="mould")
    medal.descendants.create(target=mould, transfer="moulding", side="obverse", happened_on=date(2026, 2, 25))

    page = registrar.get(commission.get_absolute_url()).content.decode()

    assert "holds to 31 March 2026" in page and "No consent in force" not in page
