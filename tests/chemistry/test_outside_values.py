"""Old recipes, reagents, crystals, solutions and series against rows of tests/data/check_values.json.

Each row names its source and whether its text was seen.
"""

import math

import numpy as np
import periodictable
import pytest
from uncertainties import ufloat

from process.chemistry.additions import acid_density, strength_as_bought
from process.chemistry.constants import AVOGADRO, COPPER_IN_SALT, COPPER_SULPHATE
from process.chemistry.density import hydrostatic_density, mass_of
from process.chemistry.dimensions import linear_scale
from process.chemistry.expansion import EXPANSIONS
from process.chemistry.faraday import deposited_mass
from process.chemistry.hydrometer import expected_density
from process.chemistry.metals import ion
from process.chemistry.traces import trace_charge
from process.chemistry.water import water_density
from records.units import parse, ureg
from tests.chemistry.check_rows import Row, row, rows
from tests.chemistry.test_check_values import agrees

Q = ureg.Quantity
NO_AIR = Q(0.0, "g/cm**3")
ANHYDROUS = Q(periodictable.formula("CuSO4").mass, "g/mol")


@pytest.mark.parametrize("known", rows("BATH-oz", "BATH-EB2", "BATH-Ag-oz"), ids=lambda each: each.id)
def test_recipes_in_ounces_and_pounds_a_gallon(known: Row) -> None:
    """A handbook that multiplies by 7.5 instead of 7.489 is 0.15 % off."""
    agrees(known["x"].to(known.expected.units), known.expected, known.tolerance)


@pytest.mark.parametrize(("typed", "identity"), [("26 oz/gal (US)", "BATH-oz26"), ("8 oz/gal (US)", "BATH-oz8")])
def test_recipes_as_a_person_types_them(typed: str, identity: str) -> None:
    known = row(identity)
    agrees(Q(parse(typed, "_g_l").canonical, "g/L"), known.expected, known.tolerance)


@pytest.mark.parametrize(("identity", "formula"), [("HCl", "HCl"), ("NaOH", "NaOH"), ("NH3", "NH3")])
def test_strength_of_reagents_as_bought(identity: str, formula: str) -> None:
    known, molar = row(f"BATH-M-{identity}"), Q(periodictable.formula(formula).mass, "g/mol")
    agrees(strength_as_bought(known["density"], known["w"]) / molar, known.expected, known.tolerance)


def test_water_and_salt_in_the_pentahydrate() -> None:
    water, salt = row("PCT-H2O"), row("MM-CuSO4")
    five = Q(5 * periodictable.formula("H2O").mass, "g/mol")
    agrees(five / COPPER_SULPHATE.quantity, water.expected, water.tolerance)
    agrees(COPPER_SULPHATE.quantity - five, salt.expected, salt.tolerance)


@pytest.mark.parametrize("known", rows("DEN-X-"), ids=lambda each: each.id)
def test_deposits_are_as_dense_as_their_crystals(known: Row) -> None:
    """Four atoms in a cube of the lattice constant; a deposit may hold pores and is 0 to 0.3 % lighter."""
    cell = known["atoms_per_cell"] * known["M"] / AVOGADRO.quantity / known["a"] ** 3
    agrees(cell, known.expected, known.tolerance)
    code = {"Cu": "Cu2+", "Ag": "Ag+", "Au": "Au+", "Ni": "Ni2+"}[known.id.removeprefix("DEN-X-")]
    assert ion(code).density.m_as("g/cm**3") == pytest.approx(cell.m_as("g/cm**3"), rel=0.003)


@pytest.mark.parametrize(("identity", "code"), [("DEN-Cu-CDA", "Cu2+"), ("DEN-Au-OS", "Au+")])
def test_densities_of_metals(identity: str, code: str) -> None:
    agrees(ion(code).density, row(identity).expected, row(identity).tolerance)


@pytest.mark.parametrize("known", rows("SD-Cu-"), ids=lambda each: each.id)
def test_density_expected_of_copper_sulphate_alone(known: Row) -> None:
    """The register's one figure for both solutes: within 0.6 % from a thin bath to a saturated one."""
    salt = known["w"] * known.expected * COPPER_SULPHATE.quantity / ANHYDROUS
    agrees(expected_density(salt.to("g/L"), Q(0, "g/L")), known.expected, 0.006)


@pytest.mark.parametrize("known", rows("SD-Ac-10", "SD-Ac-20"), ids=lambda each: each.id)
def test_density_expected_of_acid_alone(known: Row) -> None:
    """To 20 % by mass, four times what a bath holds."""
    agrees(expected_density(Q(0, "g/L"), (known["w"] * known.expected).to("g/L")), known.expected, 0.006)


# Fitted by Myhre, Nielsen and Saastad to their own measurements: J. Chem. Eng. Data 43 (1998) 617, at 20 °C.
MYHRE = {10: 1.0659, 20: 1.1395, 30: 1.2189, 40: 1.3032, 50: 1.3959, 60: 1.4996, 70: 1.6124, 80: 1.7297, 90: 1.8174}


@pytest.mark.parametrize("known", rows("SD-Ac-"), ids=lambda each: each.id)
def test_density_of_acid_of_any_strength(known: Row) -> None:
    agrees(acid_density(known["w"]), known.expected, known.tolerance)


@pytest.mark.parametrize(("percent", "density"), MYHRE.items())
def test_density_of_acid_by_other_measurements(percent: int, density: float) -> None:
    assert acid_density(percent / 100).m_as("g/cm**3") == pytest.approx(density, rel=0.002)


def test_density_of_acid_between_and_at_the_ends_of_the_table() -> None:
    """Battery acid of 37 % has 1.28 at 20 °C (common practice); the strongest is a little lighter than 98 %."""
    assert acid_density(0.37).magnitude == pytest.approx(1.28, abs=0.003)
    assert acid_density(1.0).magnitude == pytest.approx(1.8305)
    assert acid_density(Q(ufloat(50, 1), "pct")).magnitude.std_dev == pytest.approx(0.0092, abs=0.0012)


@pytest.mark.parametrize("known", rows("WAT-KELL"), ids=lambda each: each.id)
def test_density_of_water_by_another_formula(known: Row) -> None:
    """Kell (1975) lies 3 in a million below Tanaka (2001)."""
    agrees(water_density(Q(known["T"].magnitude, "degC")), known.expected, 4e-6)


def test_weighed_in_another_liquid_and_by_what_it_displaces() -> None:
    """Iron of 7.8 g/cm³ tells the liquid's 0.79; a coin of 31.2 g that displaces 2.97 g of water has 10.5."""
    iron, coin = row("HYD-5"), row("HYD-7")
    found = hydrostatic_density(iron["m_air"], iron["m_liq"], iron.expected, NO_AIR)
    agrees(found, iron["rho"], iron.tolerance)
    found = hydrostatic_density(coin["m"], coin["m"] - coin["displaced"], Q(1, "g/cm**3"), NO_AIR)
    agrees(found, coin.expected, coin.tolerance)


def test_mass_of_a_copy_and_scale_of_two_generations_that_grow() -> None:
    mass, scale = row("MIX-14"), row("GEN-m0p3-2")
    agrees(mass_of(mass["V"], mass["rho"]), mass.expected, mass.tolerance)
    agrees(linear_scale([-scale["s"]] * 2), scale.expected, scale.tolerance)


def test_expansion_of_wax() -> None:
    known = row("CTE-wax")
    agrees((known["strain"] / known["dT"]).to("1/K"), known.expected, known.tolerance)
    agrees(EXPANSIONS["wax"].quantity, known.expected, known.tolerance)


def test_a_trapezoid_comes_to_the_integral_with_the_error_that_was_foretold() -> None:
    exact, error, bound = row("INT-3"), row("INT-5"), row("INT-6")
    tau_h, span_h = exact["tau"].m_as("h"), exact["T"].m_as("h")

    def charge(step_h: float) -> float:
        hours = np.arange(0, span_h + step_h / 2, step_h)
        currents = exact["I0"].m_as("A") * np.exp(-hours / tau_h)
        return trace_charge(hours * 3600, currents, interval_s=step_h * 3600).known.m_as("A*h")

    integral = exact.expected.m_as("A*h")
    assert charge(1 / 60) == pytest.approx(integral, rel=exact.tolerance * 2)
    assert charge(1.0) / integral - 1 == pytest.approx(error.expected.magnitude, rel=error.tolerance)
    assert abs(charge(1.0) - integral) <= bound.expected.m_as("A*h")
    assert bound["I2max"].m_as("A/h**2") == pytest.approx(2 / tau_h**2)


def test_the_expanded_uncertainty_of_a_mass() -> None:
    """k = 2; the atomic weight's own share is negligible and left out."""
    known = row("UNC-4")
    current = Q(ufloat(known["I"].m_as("A"), known["u_I"].m_as("A")), "A")
    time = Q(ufloat(known["t"].m_as("s"), known["u_t"].m_as("s")), "s")
    efficiency = Q(ufloat(known["eta"].magnitude, known["u_eta"].magnitude), "")
    mass = deposited_mass(ion("Cu2+"), current * time, efficiency)
    assert 2 * mass.m_as("g").std_dev == pytest.approx(known.expected.m_as("g"), rel=known.tolerance)


def test_a_salt_that_is_weighed_with_its_water() -> None:
    """3.9291 g of the pentahydrate hold a gram of copper, 1.5644 g a gram without water: computed, periodictable."""
    assert 1 / COPPER_IN_SALT.quantity.m == pytest.approx(3.9291, abs=1e-4)
    assert math.isclose((COPPER_SULPHATE.quantity / ANHYDROUS).m_as(""), 1.5644, abs_tol=1e-4)
