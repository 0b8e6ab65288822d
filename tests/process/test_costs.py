"""Hours, metal, energy and bills of a copy. Prices and hours are invented; sums are done by hand beside each check."""

import csv
from datetime import date
from io import StringIO

import pytest
from django.urls import reverse

from process.models import Expense, PriceList, WorkEstimate, WorkHours
from process.summaries.commission_costs import costs_of_commission
from process.summaries.copy_costs import costs_of_copy
from tests.factories import make_commission, make_copy, make_party, make_run, make_user

pytestmark = pytest.mark.django_db
DAY = date(2026, 3, 2)


@pytest.fixture
def commission():
    PriceList.objects.create(
        valid_from=date(2026, 1, 1), labour_money_h=42, metal_money_kg=16, energy_money_kwh=0.32, bath_money=780,
        bath_life_ah=6000,
    )  # fmt: skip
    return make_commission("RQ-2026-001")


@pytest.fixture
def copy(commission):
    return make_copy("R.2026.1", commission=commission)


def hours(work_h, kind="making_up", **fields) -> WorkHours:
    person = fields.pop("person", None) or make_party()
    return WorkHours.objects.create(work_h=work_h, kind=kind, person=person, done_on=DAY, **fields)


def test_a_copy_costs_its_hours_and_its_bills(copy, commission):
    """13 h at 42 = 546.00; a bill of 48; the shells of this test grew without current, so no metal by the sheet."""
    hours(11.5, copy=copy, commission=commission)
    hours(1.5, "finish", copy=copy, commission=commission, is_rework=True)
    Expense.objects.create(copy=copy, commission=commission, what="silver", sum_money=48, spent_on=DAY)

    found = costs_of_copy(copy)

    assert (found.hours_h, found.rework_h, found.bills_money) == (13.0, 1.5, 48.0)
    assert found.parts[0].value == pytest.approx(546.0)
    metal = found.mass_g / 1000 * 16
    assert found.total.value == pytest.approx(546.0 + 48.0 + metal)


def test_without_prices_the_hours_stand_and_the_money_does_not(copy):
    PriceList.objects.all().delete()
    hours(2, copy=copy)

    found = costs_of_copy(copy)

    assert found.hours_h == 2 and found.total is None and "No price list" in found.lacking[0]


def test_a_commission_counts_what_failed_and_stands_against_its_estimate(copy, commission):
    run = make_run("D-2026-001", commission=commission, outcome="failed")
    pell = make_party("Pell")
    hours(4.5, copy=copy, commission=commission, person=pell)
    hours(1.0, "bath", run=run, commission=commission, person=pell, is_rework=True)
    WorkEstimate.objects.create(commission=commission, kind="making_up", work_h=4)
    WorkEstimate.objects.create(commission=commission, kind="finish", work_h=2)

    found = costs_of_commission(commission)

    assert (found.hours_h, found.rework_h) == (5.5, 1.0)
    assert [(line.label, line.worked_h, line.over_h) for line in found.kinds] == [
        ("bath, attended", 1.0, None), ("making-up", 4.5, 0.5), ("finish", 0, -2.0),
    ]  # fmt: skip
    assert found.people == [("Pell", "bath, attended", 1.0), ("Pell", "making-up", 4.5)]


class TestPages:
    @pytest.fixture
    def technician(self, client):
        client.force_login(make_user("technician", "pell"))
        return client

    def test_hours_are_written_on_the_page_of_the_copy(self, technician, copy, commission):
        sent = {"kind": "finish", "work_h": "90", "work_h_unit": "min", "person": "Pell", "done_on": "2026-03-02"}

        answer = technician.post(reverse("work_add", args=["copy", "R.2026.1"]), sent)

        assert answer["Location"] == reverse("copy_costs", args=["R.2026.1"])
        row = WorkHours.objects.get()
        assert (row.work_h, row.copy, row.commission) == (1.5, copy, commission)
        assert "1.5" in technician.get(answer["Location"]).content.decode()

    @pytest.mark.parametrize(
        ("time", "said"),
        [("0", "is possible here"), ("1e12", "is possible here"), ("-1", "is possible here"), ("90", "unusual")],
    )
    def test_hours_that_cannot_be_are_refused_and_long_ones_asked_about(self, technician, copy, time, said):
        sent = {"kind": "finish", "work_h": time, "work_h_unit": "h", "person": "Pell", "done_on": "2026-03-02"}

        answer = technician.post(reverse("work_add", args=["copy", "R.2026.1"]), sent)

        assert answer.status_code == 422 and said in answer.content.decode() and not WorkHours.objects.exists()

    @pytest.mark.parametrize("sum_money", ["-1", "1e12", "nan"])
    def test_a_bill_that_cannot_be_is_refused(self, technician, copy, sum_money):
        sent = {"what": "silver", "sum_money": sum_money, "sum_money_unit": "¤", "spent_on": "2026-03-02"}
        assert technician.post(reverse("expense_add", args=["copy", "R.2026.1"]), sent).status_code == 422
        assert not Expense.objects.exists()

    def test_the_currency_stands_beside_a_sum_in_field_and_error(self, technician, copy):
        """ISO 4217 codes are what the price list names; the sign for any currency is shown to nobody."""
        prices = PriceList.objects.get()
        prices.currency = "CHF"
        prices.save()
        address = reverse("expense_add", args=["copy", "R.2026.1"])

        page = technician.get(address).content.decode()
        refused = technician.post(address, {"what": "silver", "sum_money": "1e12", "spent_on": "2026-03-02"})

        assert '<span class="quantity-unit">CHF</span>' in page
        assert "CHF" in refused.content.decode() and "¤" not in page + refused.content.decode()

    def test_one_kind_of_work_is_estimated_once(self, client, commission):
        client.force_login(make_user("conservator"))
        sent = {"kind": "finish", "work_h": "2", "work_h_unit": "h"}
        address = reverse("estimate_add", args=["RQ-2026-001"])

        assert client.post(address, sent).status_code == 302
        assert client.post(address, sent).status_code == 422
        assert WorkEstimate.objects.get().work_h == 2

    def test_the_table_holds_every_line_and_the_sum(self, technician, copy, commission):
        hours(2, copy=copy, commission=commission)
        hours(1, "bath", commission=commission)

        answer = technician.get(reverse("commission_costs", args=["RQ-2026-001"]), {"export": "csv"})
        lines = list(csv.reader(StringIO(answer.getvalue().decode("utf-8-sig"))))

        assert lines[0] == ["of", "what", "who", "day", "amount", "unit"]
        assert [line[4] for line in lines if line[5] == "h"] == ["2.0", "1.0"]
        assert {line[0] for line in lines[1:]} == {"R.2026.1", "RQ-2026-001"}
        assert any(line[1] == "Together, calculated" and line[5] == "EUR" for line in lines)

    def test_hours_for_nothing_known_lead_nowhere(self, technician):
        assert technician.get(reverse("work_add", args=["mould", "M-1"])).status_code == 404
