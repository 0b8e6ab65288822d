"""What a plan takes of voltage and evenness, which density a deadline takes, and the hydrogen of a failed run."""

import pytest
from django.urls import reverse

from process.models import PowerUnit, Run, ThrowTest
from process.summaries.reckoned import reckon
from process.summaries.runs import summarise
from tests.factories import make_cathode, make_run, make_user
from tests.process.scenario_runs import failed_run

pytestmark = pytest.mark.django_db


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician"))
    return client


@pytest.fixture
def medal():
    unit = PowerUnit.objects.create(number="PU-9", rated_a=20, rated_v=1.0)
    run = make_run(nearest_mm=80, farthest_mm=120, power_unit=unit, planned_voltage_v=0.3)
    make_cathode(run, label="obverse")
    return run


def reckoned(run):
    return reckon(Run.objects.with_sheet().get(pk=run.pk))


def sentences(run):
    return " ".join(check.sentence for check in reckoned(run).checks)


def test_the_voltage_is_estimated_and_held_against_the_power_unit_and_the_plan(medal):
    """1.5 A/dm² over 100 mm at 0.2 S/cm: 0.75 V by Ohm's law, and 0.2 V for reactions and contacts."""
    medal.bath.conductivity_ms_cm = 200
    medal.bath.save()

    voltage = reckoned(medal).details.voltage

    assert voltage.drop.value == pytest.approx(0.75)
    assert voltage.estimate.value == pytest.approx(0.95) and voltage.estimate.kind == "estimated"
    assert "0.3" in sentences(medal) and "is expected" in sentences(medal)
    assert "PU-9 gives up to 1.00" in sentences(medal)


def test_more_than_the_unit_gives_is_said(medal):
    medal.bath.conductivity_ms_cm = 100
    medal.bath.save()

    assert "Hang them nearer, or use less" in sentences(medal)


def test_where_nobody_measured_the_bath_the_estimate_says_so(medal):
    voltage = reckoned(medal).details.voltage

    assert "estimated" in voltage.drop.note and voltage.drop.plus_minus


def test_without_a_distance_nothing_is_estimated(medal):
    medal.nearest_mm = medal.farthest_mm = None
    medal.save()

    assert reckoned(medal).details.voltage is None
    assert "give the distance" in sentences(medal)


def test_geometry_rules_a_medal_at_a_usual_density(medal):
    """Wa = κRT/(αF·j·l): 17.5 S/m, 295 K, α 0.5, 150 A/m², 0.0538 m give 0.110, far below 1."""
    wagner = reckoned(medal).details.wagner

    assert wagner.value == pytest.approx(0.110, abs=0.002)
    assert "Geometry rules" in wagner.note


def test_a_deadline_is_answered_with_the_density_that_it_takes_and_not_kept(technician, medal):
    """0.2 mm of copper in 2 h: 7.52 A/dm² by Faraday's law (OpenStax Chemistry 2e, 17.7)."""
    data = {
        "planned_thickness_mm": "0.20", "planned_current_density_a_dm2": "1.5", "planned_efficiency_pct": "100",
        "reading_interval_h": "2", "distribution_source": "rule", "version": str(medal.version),
        "step-TOTAL_FORMS": "0", "step-INITIAL_FORMS": "0", "ready_in_h": "2", "ready_in_h_unit": "h",
    }  # fmt: skip

    page = technician.post(reverse("run_plan_figures", args=[medal.number]), data).content.decode()
    technician.post(reverse("run_plan", args=[medal.number]), data)

    assert "To be ready in time takes 7.52" in page and "Density to be ready in time" in page
    medal.refresh_from_db()
    assert "ready_in_h" not in medal.as_typed


def test_a_failed_run_says_how_much_hydrogen_it_may_have_made(technician):
    """7.867 Ah of which 74 % made metal: 0.92 L at 20 °C (ideal gas, Faraday's law)."""
    run = failed_run()

    summary = summarise(Run.objects.with_sheet().get(pk=run.pk))

    assert summary.hydrogen.value == pytest.approx(0.92, abs=0.005)
    page = technician.get(run.get_absolute_url()).content.decode()
    assert "Hydrogen, at the most" in page and "no flame or spark" in page


def test_a_throw_test_is_told_by_all_three_scales(technician):
    """K = 5, M = 3.5: 23.1, 30.0 and 37.5 % (trade texts; Heatley's scale from memory)."""
    bath = make_run().bath
    ThrowTest.objects.create(bath=bath, tested_on="2026-02-01", near_mm=50, far_mm=250, near_gain_g=3.5, far_gain_g=1)

    page = technician.get(bath.get_absolute_url()).content.decode()

    assert "23.1" in page and "30.0" in page and "37.5" in page
