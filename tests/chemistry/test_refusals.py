"""What cannot be computed raises a clear error that names the input."""

from collections.abc import Callable
from typing import Any

import pytest
from uncertainties import ufloat

from process.chemistry.density import hydrostatic_density, mean_density
from process.chemistry.deposit import efficiency, face_thickness, mean_thickness
from process.chemistry.errors import ChemistryError
from process.chemistry.faraday import (
    charge_for_mass,
    charge_passed,
    current_for_charge,
    deposited_mass,
    deposition_time,
)
from process.chemistry.metals import ion
from process.chemistry.plan import bath_current, cathode_area, relief_disc_area, target_mass
from process.chemistry.shares import share_by_mass
from records.units import ureg

Q = ureg.Quantity
COPPER = ion("Cu2+")
GRAM, AH, AMPERE, HOUR = Q(1.0, "g"), Q(1.0, "A*h"), Q(1.0, "A"), Q(1.0, "h")
DM2, MM = Q(1.0, "dm**2"), Q(1.0, "mm")


@pytest.mark.parametrize(
    ("compute", "message"),
    [
        (lambda: charge_passed(HOUR, HOUR), "current: 1.0 h is of the wrong kind; give current in A"),
        (lambda: deposited_mass(COPPER, GRAM), "charge: 1.0 g is of the wrong kind; give charge in A·h"),
        (lambda: mean_thickness(COPPER, GRAM, MM), "area: 1.0 mm is of the wrong kind; give area in dm²"),
        (lambda: deposition_time(AMPERE, AMPERE), "charge: 1.0 A is of the wrong kind"),
        (lambda: bath_current(Q(15, "A"), DM2), "current density: 15 A is of the wrong kind"),
        (lambda: cathode_area([DM2, MM]), "areas: 1.0 mm is of the wrong kind"),
        (lambda: deposited_mass(COPPER, 3.0), "charge: 3.0 is of the wrong kind"),
        (lambda: deposited_mass(COPPER, "3"), "charge: '3' is no quantity; give it in A·h"),
        (lambda: deposited_mass(COPPER, None), "charge: None is no quantity"),
        (lambda: deposited_mass("Cu2+", AH), "ion: 'Cu2+' is no metal"),
    ],
)
def test_wrong_kinds_are_refused(compute: Callable[[], Any], message: str) -> None:
    with pytest.raises(ChemistryError) as refusal:
        compute()
    assert str(refusal.value).startswith(message)


@pytest.mark.parametrize(
    ("compute", "message"),
    [
        (lambda: mean_thickness(COPPER, GRAM, 0 * DM2), "area: must be more than zero; 0 dm² was given"),
        (lambda: face_thickness(COPPER, GRAM, -DM2), "face area: must be more than zero; -1 dm² was given"),
        (lambda: target_mass(COPPER, DM2, 0 * MM), "thickness: must be more than zero; 0 mm was given"),
        (lambda: charge_passed(AMPERE, -HOUR), "time: cannot be negative; -1 h was given"),
        (lambda: charge_passed(-AMPERE, HOUR), "current: cannot be negative"),
        (lambda: deposition_time(AH, 0 * AMPERE), "current: must be more than zero"),
        (lambda: current_for_charge(AH, 0 * HOUR), "time: must be more than zero"),
        (lambda: efficiency(COPPER, GRAM, 0 * AH), "charge: must be more than zero"),
        (lambda: relief_disc_area(MM, 0), "relief factor: must be more than zero; 0 was given"),
        (lambda: cathode_area([]), "areas: give at least one value"),
        (lambda: cathode_area(DM2), "areas: give a list of values"),
        (lambda: share_by_mass(AH, GRAM, [GRAM, 0 * GRAM]), "masses: must be more than zero"),
        (lambda: mean_density([GRAM], [0 * MM**3]), "volumes: add up to nothing"),
        (lambda: hydrostatic_density(GRAM, GRAM, GRAM / MM**3), "in water: must read less than in air"),
    ],
)
def test_values_that_cannot_be_are_refused(compute: Callable[[], Any], message: str) -> None:
    with pytest.raises(ChemistryError) as refusal:
        compute()
    assert str(refusal.value).startswith(message)


@pytest.mark.parametrize("planned", [1.2, 0, -0.5, Q(120, "pct")])
def test_a_planned_efficiency_is_more_than_0_and_at_most_1(planned: Any) -> None:
    with pytest.raises(ChemistryError, match="efficiency: a planned efficiency is more than 0 and at most 1"):
        charge_for_mass(COPPER, GRAM, planned)


def test_a_planned_efficiency_may_be_written_in_per_cent() -> None:
    in_per_cent = charge_for_mass(COPPER, GRAM, Q(98.5, "pct"))
    assert in_per_cent.magnitude == pytest.approx(charge_for_mass(COPPER, GRAM, 0.985).magnitude)


def test_a_measured_efficiency_over_1_is_a_result() -> None:
    assert efficiency(COPPER, Q(199.6, "g"), Q(163.5, "A*h")).magnitude == pytest.approx(1.030, abs=5e-4)


@pytest.mark.parametrize(
    "value", [float("nan"), float("inf"), float("-inf"), ufloat(float("nan"), 0.1), ufloat(1, float("nan"))]
)
def test_what_is_no_finite_number_is_refused(value: Any) -> None:
    with pytest.raises(ChemistryError, match="charge: is not a finite number"):
        deposited_mass(COPPER, Q(value, "A*h"))


def test_the_error_names_its_input_for_the_form() -> None:
    with pytest.raises(ChemistryError) as refusal:
        face_thickness(COPPER, GRAM, 0 * DM2)
    assert refusal.value.input == "face_area"
    assert refusal.value.problem == "must be more than zero; 0 dm² was given"
