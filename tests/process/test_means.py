"""“A calculated mean can never be entered, shown or printed as measured”: not on the page of any measurement either."""

from datetime import date

import pytest
from django.urls import reverse

from process.models import CouponTest, Shell, ThicknessPoint
from records.models import Measurement
from tests.factories import make_copy, make_item, make_user
from tests.process.scenario_runs import coin_run

pytestmark = pytest.mark.django_db


@pytest.fixture
def shells(client) -> list[Shell]:
    client.force_login(make_user("conservator"))
    coin_run()
    return list(Shell.objects.select_related("item").order_by("item__number"))


def measure(client, number, **fields):
    given = {"what": "thickness", "amount": "0,422", "amount_unit": "mm", "amount_kind": "measured", "point": ""}
    return client.post(reverse("measurement_add", args=[number]), given | fields)


@pytest.mark.parametrize("point", ["mean of the wall", "field, 3 h", ""])
@pytest.mark.parametrize("kind", ["measured", ""])
def test_the_wall_of_a_shell_is_measured_only_as_points(client, shells, point, kind):
    """Fault 3 of the scenario, on another page: 0.42 mm is what the mass says of S-05, not an instrument."""
    page = measure(client, "S-05", point=point, amount_kind=kind)

    assert page.status_code == 422 and not Measurement.objects.exists()
    assert "is measured point by point" in page.content.decode() and 'value="0,422"' in page.content.decode()


def test_a_mean_of_a_copy_is_not_called_measured(client, shells):
    copy = make_copy("R.2026.2", shells=shells, made_up_on=date(2026, 3, 5), afterwards=True)

    refused = measure(client, "R.2026.2", point="mean of the wall")
    calculated = measure(client, "R.2026.2", point="mean of the wall", amount_kind="calculated")
    place = measure(client, "R.2026.2", point="field, 3 h")

    assert refused.status_code == 422 and "no place that an instrument was put to" in refused.content.decode()
    assert (calculated.status_code, place.status_code) == (302, 302)
    assert copy.measurements.count() == 2


def test_the_mean_of_four_places_of_an_original_is_a_measurement(client, shells):
    make_item("X.7")

    assert measure(client, "X.7", point="mean of four, 3, 6, 9 and 12 h").status_code == 302


@pytest.mark.parametrize(("name", "day"), [("thickness_add", "measured_on"), ("coupon_add", "tested_on")])
def test_nothing_is_measured_while_it_hangs_in_the_bath(client, shells, name, day):
    """SCENARIO 7.3: the run ends on 3 March 2026."""
    given = {
        "place": "field, 3 h", "thickness_mm": "0.31", "method": "micrometer", "number": "S-05-a", "bends_count": "3",
        "layers": "yes", "taken_from": "flange",
    }  # fmt: skip
    address = reverse(name, args=["S-05"])

    early = client.post(address, given | {day: "2026-03-02"})
    after = client.post(address, given | {day: "2026-03-03"})

    assert early.status_code == 422 and "It came out of the bath on 3 March 2026" in early.content.decode()
    assert after.status_code == 302
    rows = [*ThicknessPoint.objects.all(), *CouponTest.objects.all()]
    assert [getattr(each, day) for each in rows] == [date(2026, 3, 3)]
