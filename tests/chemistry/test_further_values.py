"""Other metals, old recipes, gases and doubts against rows of tests/data/check_values.json.

Each row names its source and whether its text was seen. What the register does not reckon has no row:
resistivities, molar conductivities and the electromotive force of old cells (it asks for what an instrument shows),
solubility (a bath is judged by its own limits), salts of silver with cyanide.
"""

from collections.abc import Callable
from typing import Any

import numpy as np
import periodictable
import pytest
from uncertainties import ufloat

from process.chemistry import constants
from process.chemistry.deposit import mean_thickness
from process.chemistry.dimensions import deviation
from process.chemistry.faraday import charge_passed, current_for_charge, deposition_time
from process.chemistry.gas import hydrogen_volume
from process.chemistry.metals import ion
from process.chemistry.solutions import copper_in_salt
from process.chemistry.traces import trace_charge
from records.units import ureg
from tests.chemistry.check_rows import Row, row, rows
from tests.chemistry.test_check_values import FARADAY_ROWS, agrees

Q = ureg.Quantity
F = constants.FARADAY.quantity


def reduced(row: Row, charge: Any) -> Any:
    """Moles of a metal that the register does not plate: z and M come with the row."""
    return (charge / (row["z"] * F)).to("mol")


def needed(row: Row) -> Any:
    return (row["mass"] / row["M"] * row["z"] * F).to("A*h")


OTHER_METALS: dict[str, Callable[[Row], Any]] = {
    "FAR-004": lambda r: reduced(r, charge_passed(r["I"], r["t"])),
    "FAR-010": lambda r: reduced(r, r["Q"]) * r["M"],
    "FAR-013": lambda r: reduced(r, r["Q"]) * r["M"],
    "FAR-014": lambda r: (r["Q"] / (r["electrons_per_molecule"] * F)).to("mol") * r["M"],
    "FAR-019": lambda r: deposition_time((r["n"] * r["z"] * F).to("A*h"), r["I"]),
    "FAR-035": lambda r: current_for_charge(needed(r), r["t"]),
    "FAR-037": lambda r: deposition_time(needed(r), r["I"]),
}


@pytest.mark.parametrize("known", [each for each in rows("FAR-") if each.id in OTHER_METALS], ids=lambda each: each.id)
def test_metals_that_are_not_plated_here(known: Row) -> None:
    agrees(OTHER_METALS[known.id](known), known.expected, known.tolerance)


def test_each_worked_example_is_reckoned_somewhere() -> None:
    assert {each.id for each in rows("FAR-")} == FARADAY_ROWS.keys() | OTHER_METALS.keys()


def test_a_molar_volume_and_the_slope_of_a_cell() -> None:
    bar, slope = row("CON-Vm-bar"), row("HIS-2")
    gas = constants.MOLAR_GAS.quantity
    agrees(gas * bar["T"] / bar["p"], bar.expected, bar.tolerance)
    agrees(gas * slope["T"] * np.log(10) / (slope["z"] * F), slope.expected, slope.tolerance)


def test_oxygen_takes_twice_the_electrons_of_hydrogen() -> None:
    known = row("GAS-O2")
    freezing = Q(273.15, "K")
    agrees(hydrogen_volume(known["charge"], 0.0, freezing) / 2, known.expected, known.tolerance)


def test_a_recipe_of_the_1840s() -> None:
    salt, acid = row("BATH-Davis-salt"), row("BATH-Davis-acid")
    agrees(salt["salt"] / salt["water"], salt.expected, salt.tolerance)
    agrees(acid["acid"] * acid["density"] / acid["water"], acid.expected, acid.tolerance)


def test_a_saturated_bath() -> None:
    known, copper = row("SOL-gL"), row("SOL-gLCu")
    anhydrous = Q(periodictable.formula("CuSO4").mass, "g/mol")
    salt = (known["w"] * known["density"] * constants.COPPER_SULPHATE.quantity / anhydrous).to("g/L")
    agrees(salt, known.expected, known.tolerance)
    agrees(copper_in_salt(salt), copper.expected, copper.tolerance)


def test_a_mould_that_came_out_short() -> None:
    known = row("GEN-rtv")
    inch = Q(1, "inch")
    agrees(-deviation(inch - known["x"], inch), known.expected, known.tolerance)


def test_most_of_the_doubt_of_a_thickness_is_the_area() -> None:
    known, known_to = row("UNC-7"), row("UNC-6")
    mass, area, density = (
        ufloat(known_to[name].magnitude, known_to[f"u_{name}"].magnitude) for name in ("m", "A", "rho")
    )
    wall = mean_thickness(ion("Cu2+", Q(density, "g/cm**3")), Q(mass, "g"), Q(area, "cm**2")).magnitude
    shares = {name.nominal_value: part**2 for name, part in wall.error_components().items()}
    assert shares[150] / wall.std_dev**2 == pytest.approx(known.expected.magnitude, rel=known.tolerance)


def test_the_noise_of_a_logger_grows_with_the_root_of_its_samples() -> None:
    """500 noisy traces of one constant current scatter as the row foretells; fixed random numbers."""
    known, noise = row("INT-7"), np.random.default_rng(1624)
    seconds = np.arange(known["intervals"].magnitude + 1) * known["step"].m_as("s")
    sigma = known["sigma"].m_as("A")
    found = [
        trace_charge(seconds, 2.0 + noise.normal(0, sigma, seconds.size), interval_s=3600).known.m_as("A*h")
        for _ in range(500)
    ]
    assert np.std(found) == pytest.approx(known.expected.m_as("A*h"), rel=0.1)
    assert np.mean(found) == pytest.approx(24.0, abs=0.01)
