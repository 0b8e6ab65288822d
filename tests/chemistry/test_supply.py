"""What stands behind a plan: thinnest place, anodes, load, power unit, voltage, cost; limits are common practice."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from process.chemistry.costs import (
    bath_share,
    cost_of_copy,
    cost_of_run,
    energy_cost,
    expected_attempts,
    labour_cost,
    metal_cost,
)
from process.chemistry.deposit import growth_rate
from process.chemistry.errors import ChemistryError
from process.chemistry.gas import energy_used
from process.chemistry.metals import ion
from process.chemistry.plan import Step
from process.chemistry.ramp import charge_after_hours, current_after_hours, stages_of
from process.chemistry.supply import (
    anode_ratio,
    bath_load,
    cell_voltage,
    density_for_time,
    mean_for_minimum,
    minimum_anywhere,
    ohmic_drop,
    resolution_share,
)
from records.units import ureg
from tests.chemistry.check_rows import row

Q = ureg.Quantity
COPPER = ion("Cu2+")
share = st.floats(min_value=0.05, max_value=1)
usual = st.floats(min_value=1e-3, max_value=1e3)


@given(usual, share)
def test_minimum_and_mean_invert_each_other(mm, factor) -> None:
    assert mean_for_minimum(minimum_anywhere(Q(mm, "mm"), factor), factor).magnitude == pytest.approx(mm)


@given(usual, usual, share)
def test_density_for_a_time_grows_just_that_thickness(mm, hours, efficiency) -> None:
    density = density_for_time(COPPER, Q(mm, "mm"), Q(hours, "h"), efficiency)
    grown = (growth_rate(COPPER, density, efficiency) * Q(hours, "h")).m_as("mm")
    assert grown == pytest.approx(mm)


def test_a_printing_shell_in_two_hours_lies_in_the_range_of_an_agitated_bath() -> None:
    """0.15–0.2 mm in under two hours (common practice, no published source) takes 5.6–7.5 A/dm²; the Surface Finishing
    Guidebook 2011–12, table VIII, gives 2.2–10.8 A/dm² for agitated acid copper."""
    thin, thick = (density_for_time(COPPER, Q(mm, "mm"), Q(2, "h")).magnitude for mm in (0.15, 0.2))
    assert (thin, thick) == (pytest.approx(5.64, abs=0.01), pytest.approx(7.52, abs=0.01))
    assert 2.2 < thin < thick < 10.8


def test_weak_currents_need_twenty_times_as_long() -> None:
    """The film grows in proportion to the current (common practice, no published source; Faraday's law says so)."""
    quick, weak = growth_rate(COPPER, Q(6, "A/dm**2")), growth_rate(COPPER, Q(0.3, "A/dm**2"))
    assert (quick / weak).m_as("") == pytest.approx(20)


@pytest.mark.parametrize("identity", ["OHM-1", "OHM-2"])
def test_ohmic_drop(identity) -> None:
    known = row(identity)
    found = ohmic_drop(known["j"], known["gap"], known["kappa"])
    assert found.m_as("V") == pytest.approx(known.expected.magnitude, rel=known.tolerance)


def test_the_cell_takes_the_drop_of_the_bath_and_an_allowance() -> None:
    """Kirchhoff's voltage law."""
    assert cell_voltage(Q(1.0, "V"), Q(200, "mV")).m_as("V") == pytest.approx(1.2)


def test_loads_and_shares() -> None:
    assert bath_load(Q(60, "A"), Q(60, "L")).magnitude == pytest.approx(1)
    assert anode_ratio(Q(2, "dm**2"), Q(100, "cm**2")).magnitude == pytest.approx(2)
    assert resolution_share(Q(0.1, "A"), Q(80, "mA")).magnitude == pytest.approx(1.25)


def test_energy_of_the_mask_from_the_wall() -> None:
    """163.5 A·h at 1.4 V are 0.23 kWh at the cell, 0.33 from the wall of a unit of 70 %."""
    assert energy_used(Q(1.4, "V"), Q(163.5, "A*h"), 0.7).magnitude == pytest.approx(0.327, abs=0.001)


def test_cost_by_hand() -> None:
    parts = [
        labour_cost(Q(2, "h"), Q(40, "money/h")),
        metal_cost(Q(43.18, "g"), Q(14, "money/kg")),
        energy_cost(Q(0.05, "kWh"), Q(0.3, "money/kWh")),
        bath_share(Q(36.85, "A*h"), Q(600, "money"), Q(6000, "A*h")),
    ]
    assert [round(each.magnitude, 4) for each in parts] == [80, 0.6045, 0.015, 3.685]
    total = cost_of_run(parts, expected_attempts(1 / 6), Q(20, "money"))
    assert total.magnitude == pytest.approx(84.3045 * 1.2 + 20, abs=1e-3)


def test_where_every_run_fails_there_is_no_number_of_attempts() -> None:
    with pytest.raises(ChemistryError, match="mend the cause"):
        expected_attempts(1)


RAMP = (Step(Q(0.24, "A"), Q(2, "h")), Step(Q(0.64, "A"), Q(2, "h")))


def test_a_ramp_is_laid_end_to_end() -> None:
    stages = stages_of(RAMP, Q(1.21, "A"), Q(36.85, "A*h"))
    assert [stage.charge.magnitude for stage in stages] == pytest.approx([0.48, 1.28, 35.09])
    assert stages[-1].end.magnitude == pytest.approx(33.0)
    assert charge_after_hours(stages, 3).magnitude == pytest.approx(0.48 + 0.64)
    assert [current_after_hours(stages, hours).magnitude for hours in (0, 2, 32.9, 34)] == [0.24, 0.64, 1.21, 0]


@given(st.lists(st.tuples(usual, usual), max_size=5), usual)
def test_the_last_step_carries_what_the_others_left(steps, build) -> None:
    ramp = [Step(Q(a, "A"), Q(h, "h")) for a, h in steps]
    charge = Q(sum(a * h for a, h in steps) + 1.0, "A*h")
    stages = stages_of(ramp, Q(build, "A"), charge)
    assert stages[-1].charge_after.magnitude == pytest.approx(charge.magnitude)
    assert charge_after_hours(stages, stages[-1].end.magnitude + 1).magnitude == pytest.approx(charge.magnitude)


def test_steps_that_exceed_the_charge_are_refused() -> None:
    with pytest.raises(ChemistryError, match="shorten the ramp"):
        stages_of(RAMP, Q(1, "A"), Q(1, "A*h"))
    with pytest.raises(ChemistryError, match="hours"):
        charge_after_hours((), 1)


def test_the_sum_is_every_part_and_nothing_else():
    """Hand sum: 546 + 0.69 + 48 = 594.69."""
    assert cost_of_copy([Q(546.0, "money"), Q(0.69, "money"), Q(48.0, "money")]).magnitude == pytest.approx(594.69)
