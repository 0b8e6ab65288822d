"""Laws that hold for every value: there and back, sums over parts, no difference made by the unit."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from process.chemistry.deposit import grown_thickness, interface_depth, mean_thickness
from process.chemistry.faraday import (
    charge_for_mass,
    charge_passed,
    current_for_charge,
    deposited_mass,
    deposition_time,
)
from process.chemistry.metals import IONS
from process.chemistry.plan import bath_current, current_density, target_mass
from process.chemistry.series import charge_at, sheet_charge
from process.chemistry.shares import share_by_area, share_by_mass
from process.chemistry.traces import meter_charge
from records.units import ureg

Q = ureg.Quantity
usual = st.floats(min_value=1e-3, max_value=1e4)
planned = st.floats(min_value=0.05, max_value=1)
metals = st.sampled_from(list(IONS.values()))
sheets = st.lists(st.tuples(st.integers(1, 100_000), st.floats(0, 50)), min_size=2, max_size=12)


@given(metals, usual, planned)
def test_mass_to_charge_and_back(metal, grams, efficiency) -> None:
    charge = charge_for_mass(metal, Q(grams, "g"), efficiency)
    assert deposited_mass(metal, charge, efficiency).magnitude == pytest.approx(grams)


@given(metals, usual, usual)
def test_mass_to_thickness_and_back(metal, dm2, mm) -> None:
    mass = target_mass(metal, Q(dm2, "dm**2"), Q(mm, "mm"))
    assert mean_thickness(metal, mass, Q(dm2, "dm**2")).magnitude == pytest.approx(mm)


@given(usual, usual)
def test_charge_to_time_and_to_current_and_back(amperes, hours) -> None:
    charge = charge_passed(Q(amperes, "A"), Q(hours, "h"))
    assert deposition_time(charge, Q(amperes, "A")).magnitude == pytest.approx(hours)
    assert current_for_charge(charge, Q(hours, "h")).magnitude == pytest.approx(amperes)


@given(usual, usual)
def test_current_density_to_current_and_back(density, dm2) -> None:
    current = bath_current(Q(density, "A/dm**2"), Q(dm2, "dm**2"))
    assert current_density(current, Q(dm2, "dm**2")).magnitude == pytest.approx(density)


@given(metals, usual, usual, planned)
def test_grown_thickness_is_that_of_the_mass_deposited(metal, ah, dm2, efficiency) -> None:
    grown = grown_thickness(metal, Q(ah, "A*h"), Q(dm2, "dm**2"), efficiency)
    mass = deposited_mass(metal, Q(ah, "A*h"), efficiency)
    assert grown.magnitude == pytest.approx(mean_thickness(metal, mass, Q(dm2, "dm**2")).magnitude)


@given(metals, usual, usual)
def test_the_unit_makes_no_difference(metal, grams, dm2) -> None:
    plain = mean_thickness(metal, Q(grams, "g"), Q(dm2, "dm**2"))
    old = mean_thickness(metal, Q(grams, "g").to("troy_ounce"), Q(dm2, "dm**2").to("inch**2"))
    assert old.m_as("mm") == pytest.approx(plain.m_as("mm"))


@given(sheets, st.data())
def test_charge_of_a_sheet_adds_up_over_a_split(entries, data) -> None:
    times, currents = zip(*sorted(entries), strict=True)
    split = data.draw(st.integers(0, len(times) - 1))
    first = sheet_charge(times[: split + 1], currents[: split + 1]).until_ah
    rest = sheet_charge(times[split:], currents[split:]).until_ah
    assert first + rest == pytest.approx(sheet_charge(times, currents).until_ah, abs=1e-9)


@given(sheets, st.integers(0, 200_000))
def test_charge_at_an_instant_is_the_sheet_up_to_it(entries, at) -> None:
    times, currents = zip(*sorted(entries), strict=True)
    at = max(at, times[0])
    up_to = sheet_charge(times, currents, until_s=at).until_ah
    assert charge_at(times, currents, [at])[0] == pytest.approx(up_to, abs=1e-9)


@given(usual, st.lists(usual, min_size=1, max_size=6))
def test_shares_add_up_to_the_charge(ah, parts) -> None:
    charge = Q(ah, "A*h")
    areas, masses = [Q(each, "dm**2") for each in parts], [Q(each, "g") for each in parts]
    assert sum(share_by_area(charge, each, areas).magnitude for each in areas) == pytest.approx(ah)
    assert sum(share_by_mass(charge, each, masses).magnitude for each in masses) == pytest.approx(ah)


@given(usual, usual)
def test_a_meter_counts_differences(before, passed) -> None:
    found = meter_charge(Q(before, "A*h"), Q(before + passed, "A*h"))
    assert found.magnitude == pytest.approx(passed, abs=1e-9)


@given(usual, st.floats(min_value=0, max_value=1))
def test_an_interface_lies_within_the_wall(mm, share) -> None:
    depth = interface_depth(Q(mm, "mm"), Q(share, "A*h"), Q(1, "A*h"))
    assert 0 <= depth.magnitude <= mm
