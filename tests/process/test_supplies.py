"""Power units, prices and throw tests: kept, corrected, and refused where they cannot be."""

import pytest
from django.urls import reverse

from process.models import PowerUnit, PriceList, ThrowTest
from tests.factories import make_bath, make_user

pytestmark = pytest.mark.django_db

UNIT = {"number": "PU-1", "rated_a": "30", "rated_v": "12", "resolution_a": "10", "resolution_a_unit": "mA",
        "after_failure": "resumes", "efficiency_pct": "70"}  # fmt: skip
PRICES = {"valid_from": "2026-01-01", "ion": "Cu2+", "currency": "EUR", "labour_money_h": "42", "metal_money_kg": "16",
          "energy_money_kwh": "0,32", "bath_money": "780", "bath_life_ah": "6000", "failure_pct": "15"}  # fmt: skip
TEST = {"tested_on": "2026-02-10", "near_mm": "50", "far_mm": "250", "near_gain_g": "3.5", "far_gain_g": "1"}


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician"))
    return client


def test_a_power_unit_is_kept_and_stands_in_the_list(technician):
    assert technician.post(reverse("power_unit_add"), UNIT).status_code == 302

    assert PowerUnit.objects.get().resolution_a == pytest.approx(0.01)
    assert "resumes by itself" in technician.get(reverse("power_unit_list")).content.decode()


@pytest.mark.parametrize("wrong", [{"rated_a": "0"}, {"efficiency_pct": "120"}, {"number": "new"}, {"rated_v": "x"}])
def test_a_power_unit_that_cannot_be_is_given_back(technician, wrong):
    answer = technician.post(reverse("power_unit_add"), UNIT | wrong)

    assert answer.status_code == 422 and not PowerUnit.objects.exists()


def test_prices_begin_with_the_last_ones(technician):
    assert technician.post(reverse("price_add"), PRICES).status_code == 302

    assert PriceList.objects.get().energy_money_kwh == pytest.approx(0.32)
    assert b'value="42"' in technician.get(reverse("price_add")).content


@pytest.mark.parametrize("wrong", [{"failure_pct": "100"}, {"labour_money_h": "-1"}, {"bath_life_ah": "0"}])
def test_prices_that_cannot_be_are_given_back(technician, wrong):
    assert technician.post(reverse("price_add"), PRICES | wrong).status_code == 422
    assert not PriceList.objects.exists()


def test_a_throw_test_shows_both_numbers_with_its_ratio(technician):
    """K = 5, M = 3.5: Haring–Blum 30.0 %, Field 23.08 % (check values TP-*)."""
    bath = make_bath()

    assert technician.post(reverse("throw_test_add", args=[bath.number]), TEST).status_code == 302

    page = technician.get(bath.get_absolute_url()).content.decode()
    assert "K = 5, M = 3.5" in page and "Haring–Blum" in page
    assert ">30.0<" in page and ">23.1<" in page


@pytest.mark.parametrize("wrong", [{"far_mm": "40"}, {"far_gain_g": "0"}, {"near_mm": "-5"}])
def test_a_throw_test_that_tells_nothing_is_given_back(technician, wrong):
    answer = technician.post(reverse("throw_test_add", args=[make_bath().number]), TEST | wrong)

    assert answer.status_code == 422 and not ThrowTest.objects.exists()


@pytest.mark.parametrize("role", ["reader", "curator"])
def test_only_the_workshop_enters_them(client, role):
    client.force_login(make_user(role))

    assert client.post(reverse("power_unit_add"), UNIT).status_code == 403
    assert client.post(reverse("throw_test_add", args=[make_bath().number]), TEST).status_code == 403
