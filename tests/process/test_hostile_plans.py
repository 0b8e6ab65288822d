"""Nothing that is typed into a plan, an area or a price may be more than refused or reckoned."""

import itertools

import pytest
from django.urls import reverse

from tests.factories import make_bath, make_cathode, make_run, make_user

pytestmark = pytest.mark.django_db

NUMBERS = ["1e300", "9" * 64, "nan", "-1", "\0", "9**9**9"]
PLAN = [
    "planned_thickness_mm", "planned_current_density_a_dm2", "planned_efficiency_pct", "reading_interval_h",
    "planned_minimum_mm", "distribution_factor", "nearest_mm", "farthest_mm", "planned_voltage_v", "anode_mass_g",
    "anode_area_dm2", "attended_h", "outside_money", "planned_start_at", "power_unit", "distribution_source",
    "step-0-density", "step-0-current", "step-0-time", "step-0-words", "step-TOTAL_FORMS",
]  # fmt: skip


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician"))
    client.raise_request_exception = True
    return client


@pytest.mark.parametrize("field", PLAN)
def test_a_plan_is_kept_or_given_back(technician, field):
    run = make_run()
    make_cathode(run)
    for number, way in zip(NUMBERS, itertools.cycle(({}, {"it_is_so": "x"})), strict=False):
        data = {
            "planned_thickness_mm": "0.6", "planned_current_density_a_dm2": "1.5", "planned_efficiency_pct": "98.5",
            "reading_interval_h": "2", "distribution_source": "measured", "step-TOTAL_FORMS": "1",
            "step-INITIAL_FORMS": "0", "step-0-density": "1", "step-0-time": "1", "version": str(run.version),
        } | {field: number} | way  # fmt: skip
        page = "run_plan_figures" if way else "run_plan"
        assert technician.post(reverse(page, args=[run.number]), data).status_code in (200, 302, 400, 422)
        run.refresh_from_db()
    assert technician.get(reverse("run_plan", args=[run.number])).status_code == 200


SHAPES = {
    "disc": ["diameter_mm", "relief_factor"], "cone": ["diameter_mm", "inner_diameter_mm", "height_mm"],
    "profile": ["profile"], "foil": ["foil_mass_g", "sample_mass_g", "sample_area_dm2"], "entered": ["area_dm2"],
    "plate": ["length_mm", "width_mm", "pieces_count", "uncertainty_pct"],
}  # fmt: skip


@pytest.mark.parametrize("shape", SHAPES)
def test_an_area_is_kept_or_given_back(technician, shape):
    cathode = make_cathode(make_run())
    url = reverse("area_add", args=[cathode.pk, shape])
    for field, number in itertools.product(SHAPES[shape], NUMBERS):
        data = {"part": "face", "pieces_count": "1"} | dict.fromkeys(SHAPES[shape], "2") | {field: number}
        assert technician.post(url, data).status_code in (302, 422)
    assert technician.get(reverse("cathode_area", args=[cathode.pk])).status_code == 200
    assert technician.get(reverse("run_plan", args=[cathode.run.number])).status_code == 200


@pytest.mark.parametrize("number", NUMBERS)
def test_prices_units_and_throw_tests_are_kept_or_given_back(technician, number):
    bath = make_bath()
    pages = {
        "price_add": [
            "labour_money_h",
            "metal_money_kg",
            "energy_money_kwh",
            "bath_money",
            "bath_life_ah",
            "failure_pct",
        ],
        "power_unit_add": ["rated_a", "rated_v", "resolution_a", "efficiency_pct"],
    }
    for page, names in pages.items():
        data = {"number": f"PU {len(number)}", "valid_from": "2026-01-01", "ion": "Cu2+", "after_failure": "off"}
        assert technician.post(reverse(page), data | dict.fromkeys(names, number)).status_code in (302, 422)
    data = {"tested_on": "2026-01-01"} | dict.fromkeys(["near_mm", "far_mm", "near_gain_g", "far_gain_g"], number)
    url = reverse("throw_test_add", args=[bath.number])
    for changed in ({}, {"far_mm": "250", "near_mm": "50"}):
        assert technician.post(url, data | changed).status_code in (302, 422)
    assert technician.get(bath.get_absolute_url()).status_code == 200
    run = make_run(bath=bath)
    make_cathode(run)
    assert technician.get(reverse("run_plan", args=[run.number])).status_code == 200
