"""Usual and impossible values. Figures: common practice of acid copper baths (DOMAIN 4.13), from memory;
1 A/ft² = 0.107639 A/dm² (1 ft = 0.3048 m exactly, international foot of 1959)."""

import pytest
from django.urls import reverse

from process.models import Range
from process.ranges import judge
from process.seeding import ensure_ranges
from tests.factories import make_user

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def table():
    ensure_ranges()


@pytest.mark.parametrize(
    ("field", "step", "value", "verdict"),
    [
        ("planned_current_density_a_dm2", "quiet", 1.5, "usual"),
        ("planned_current_density_a_dm2", "quiet", 4.0, "unusual"),
        ("planned_current_density_a_dm2", "agitated", 4.0, "usual"),
        ("current_density_a_dm2", "strike", 1.5, "unusual"),
        ("current_density_a_dm2", "quiet", 61.0, "impossible"),
        ("current_density_a_dm2", "quiet", -1.0, "impossible"),
        ("voltage_v", "any", 0.8, "usual"),
        ("temperature_degc", "quiet", 34.0, "unusual"),
        ("copper_sulphate_g_l", "any", 2034.0, "impossible"),
        ("planned_thickness_mm", "any", 0.01, "unusual"),
        ("anything_else_g", "any", 1e9, "usual"),
    ],
)
def test_verdicts(field, step, value, verdict):
    assert judge(field, value, step=step).verdict == verdict


def test_step_without_a_row_of_its_own_falls_back_to_any():
    assert judge("voltage_v", 5.0, step="agitated").verdict == "unusual"


def test_fifteen_per_square_foot_is_recognised():
    opinion = judge("planned_current_density_a_dm2", 15.0, step="quiet", number=15.0, unit="A/dm²")

    assert "15 A/ft² = 1.61\u2009A/dm² would be usual. Is the unit right?" in opinion.sentence


def test_the_other_way_round_too():
    value = 1.5 * 0.107639

    opinion = judge("planned_current_density_a_dm2", value, step="quiet", number=1.5, unit="A/ft²")

    assert "1.5 A/dm² would be usual" in opinion.sentence


def test_fahrenheit_is_recognised():
    assert "72 °F = 22.2\u2009°C would be usual" in judge("temperature_degc", 72.0, number=72.0, unit="°C").sentence


def test_open_side_has_no_limit():
    Range.objects.create(field="odd_mm", usual_low=1.0)

    assert judge("odd_mm", 1e6).is_usual
    assert "at least 1 mm" in judge("odd_mm", 0.5).sentence


def test_full_table_is_left_alone():
    before = Range.objects.count()

    ensure_ranges()

    assert Range.objects.count() == before


def test_conservator_changes_what_is_usual(client):
    client.force_login(make_user("conservator"))
    row = Range.objects.get(field="voltage_v")

    client.post(reverse("range_edit", args=[row.pk]), {"usual_low": "0.2", "usual_high": "3", "version": row.version})

    row.refresh_from_db()
    assert (row.usual_low, row.usual_high) == (0.2, 3.0)
    assert "Voltage" in client.get(reverse("range_list")).content.decode()


def test_crossed_bounds_are_sent_back(client):
    client.force_login(make_user("conservator"))
    row = Range.objects.get(field="voltage_v")

    answer = client.post(
        reverse("range_edit", args=[row.pk]), {"usual_low": "5", "usual_high": "3", "version": row.version}
    )

    assert answer.status_code == 422 and "bounds cross" in answer.content.decode()
