"""Every formula against outside figures; each row of tests/data/check_values.json names its source, and
whether its text was seen (`seen: true`) or is from memory or computed from constants (`seen: false`)."""

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from uncertainties import ufloat

from process.chemistry import constants, elements
from process.chemistry.density import hydrostatic_density, mean_density
from process.chemistry.deposit import efficiency, energised_rate, growth_rate, mean_thickness
from process.chemistry.dimensions import linear_scale, predicted_dimension
from process.chemistry.faraday import (
    charge_for_mass,
    charge_passed,
    deposited_mass,
    deposition_time,
    electrochemical_equivalent,
)
from process.chemistry.gas import energy_used, hydrogen_volume
from process.chemistry.metals import ion
from process.chemistry.plan import target_mass
from process.chemistry.series import sheet_charge
from process.chemistry.solutions import (
    copper_in_salt,
    copper_sulphate_found,
    sample_in_aliquot,
    sulphuric_acid_found,
)
from process.chemistry.traces import trace_charge
from records.units import ureg
from tests.chemistry.check_rows import Row, row, rows

Q = ureg.Quantity
HOUR = Q(1, "h")
ONE_AH = Q(1, "A*h")


def agrees(found: Any, expected: Any, tolerance: float) -> None:
    assert found.m_as(expected.units) == pytest.approx(expected.magnitude, rel=tolerance)


def charge_of(row: Row) -> Any:
    return charge_passed(row["I"], row["t"])


def grown(row: Row) -> Any:
    """Thickness of one ampere-minute per square decimetre."""
    area = Q(1, "dm**2")
    return mean_thickness(row.ion(), deposited_mass(row.ion(), row["charge_density"] * area), area)


def charge_for_a_mil(row: Row) -> Any:
    return charge_for_mass(row.ion(), target_mass(row.ion(), row["area"], row["thickness"]))


def time_for(row: Row) -> Any:
    return deposition_time(charge_for_mass(row.ion(), row["mass"]), row["I"])


def mass_grown(row: Row) -> Any:
    return deposited_mass(row.ion(), charge_of(row))


def area_of_part(row: Row) -> Any:
    return mass_grown(row) / (row.ion().density * row["thickness"])


def electrons(row: Row) -> Any:
    return (charge_of(row) / constants.FARADAY.quantity).to("mol")


FARADAY_ROWS: dict[str, Callable[[Row], Any]] = {
    "FAR-001": electrons,
    "FAR-020": lambda r: deposition_time((r["n"] * r["z"] * constants.FARADAY.quantity).to("A*h"), r["I"]),
    "FAR-028": lambda r: deposition_time((r["mass"] / r["k"]).to("A*h"), r["I"]),
    "FAR-040": lambda r: (charge_for_mass(r.ion(), r["mass"]) / constants.FARADAY.quantity).to("mol"),
    "FAR-044": lambda r: (ion("Ag+").equivalent / ion("Cu2+").equivalent).to(""),
    "FAR-006": lambda r: charge_for_mass(r.ion(), r["mass"]),
    "FAR-007": time_for,
    "FAR-009": time_for,
    "FAR-011": lambda r: deposited_mass(r.ion(), r["Q"]),
    "FAR-015": charge_of,
    "FAR-016": area_of_part,
    "FAR-022": lambda r: mean_thickness(ion("Ag+", r["density"]), r["mass"], r["area"]),
    "FAR-026": time_for,
    "FAR-029": mass_grown,
    "FAR-030": mass_grown,
    "FAR-031": time_for,
    "FAR-032": mass_grown,
    "FAR-034": mass_grown,
    "FAR-039": time_for,
    "FAR-041": lambda r: growth_rate(r.ion(), r["j"]),
    "FAR-043": mass_grown,
    "FAR-045": lambda r: charge_for_mass(r.ion(), r["mass"]),
    "FAR-046": lambda r: efficiency(r.ion(), r["gain"], r["charge"]),
}


@pytest.mark.parametrize("row", [r for r in rows("FAR-") if r.id in FARADAY_ROWS], ids=lambda r: r.id)
def test_faraday_worked_examples(row: Row) -> None:
    agrees(FARADAY_ROWS[row.id](row), row.expected, row.tolerance)


@pytest.mark.parametrize("row", rows("EQV-", "MGC-"), ids=lambda r: r.id)
def test_electrochemical_equivalents(row: Row) -> None:
    agrees(electrochemical_equivalent(row.ion()), row.expected, row.tolerance)


@pytest.mark.parametrize("row", rows("MIL-"), ids=lambda r: r.id)
def test_charge_for_a_thousandth_of_an_inch(row: Row) -> None:
    agrees(charge_for_a_mil(row), row.expected, row.tolerance)


@pytest.mark.parametrize("row", rows("OZ-"), ids=lambda r: r.id)
def test_weight_of_a_thousandth_of_an_inch_on_a_square_foot(row: Row) -> None:
    metal = ion({"OZ-Cu": "Cu2+", "OZ-Sn": "Sn2+"}[row.id], row["density"])
    agrees(target_mass(metal, Q(1, "foot**2"), Q(1, "thou")), row.expected, row.tolerance)


def test_the_density_assumed_decides_the_thickness() -> None:
    wrong, film = row("THK-2"), row("THK-3")
    by_density = [mean_thickness(ion("Cu2+", rho), Q(1, "g"), Q(1, "dm**2")) for rho in wrong.inputs.values()]
    agrees(by_density[0] / by_density[1], wrong.expected, wrong.tolerance)
    agrees(target_mass(ion("Cu2+", film["rho"]), Q(1, "cm**2"), Q(1, "um")) / Q(1, "cm**2"), film.expected, 1e-6)


@pytest.mark.parametrize("row", rows("UMM-"), ids=lambda r: r.id)
def test_thickness_of_an_ampere_minute(row: Row) -> None:
    agrees(grown(row), row.expected, row.tolerance)


@pytest.mark.parametrize("row", rows("RATE-"), ids=lambda r: r.id)
def test_growth_rates(row: Row) -> None:
    agrees(growth_rate(row.ion(), row["j"]), row.expected, row.tolerance)


@pytest.mark.parametrize("row", rows("AW-"), ids=lambda r: r.id)
def test_atomic_weights(row: Row) -> None:
    weight = elements.ATOMIC_WEIGHTS[row.id.removeprefix("AW-")]
    agrees(Q(weight, "g/mol"), row.expected, row.tolerance)


@pytest.mark.parametrize(
    ("identity", "found"),
    [
        ("CON-F-Ah", constants.FARADAY.quantity),
        ("CON-R", constants.MOLAR_GAS.quantity),
        ("CON-Vm", constants.MOLAR_GAS.quantity * Q(273.15, "K") / constants.ATMOSPHERE.quantity),
        ("MM-CuSO4-5H2O", constants.COPPER_SULPHATE.quantity),
        ("MM-H2SO4", constants.SULPHURIC_ACID.quantity),
        ("FAC-5H2O", 1 / constants.COPPER_IN_SALT.quantity),
    ],
)
def test_constants_and_molar_masses(identity: str, found: Any) -> None:
    agrees(found, row(identity).expected, row(identity).tolerance)


@pytest.mark.parametrize("row", rows("BATH-Cu"), ids=lambda r: r.id)
def test_copper_held_by_the_salt(row: Row) -> None:
    agrees(copper_in_salt(row["salt"]), row.expected, row.tolerance)


def test_titrations_of_copper_and_acid() -> None:
    edta, acid = row("BATH-edta2"), row("BATH-naoh1")
    sample = sample_in_aliquot(edta["V_bath"], edta["V_aliquot"], edta["V_flask"])
    salt = copper_sulphate_found(edta["V_titrant"], edta["c"], sample)
    agrees(copper_in_salt(salt), edta.expected, edta.tolerance)
    found = sulphuric_acid_found(acid["V_titrant"], acid["c"], acid["V_sample"])
    agrees(found, acid.expected, acid.tolerance)


def test_titration_factors_per_millilitre() -> None:
    per_ml, mol = Q(1, "mL"), Q(1, "mol/L")
    thiosulphate, hydroxide = row("BATH-iodo2"), row("BATH-naohf")
    agrees(copper_sulphate_found(per_ml, mol, per_ml), thiosulphate.expected, thiosulphate.tolerance)
    agrees(sulphuric_acid_found(per_ml, mol, Q(10, "mL")), hydroxide.expected, hydroxide.tolerance)


@pytest.mark.parametrize("row", rows("KWH-"), ids=lambda r: r.id)
def test_energy_for_a_kilogram(row: Row) -> None:
    metal = ion("Ag+" if row.id == "KWH-Ag" else "Cu2+")
    charge = charge_for_mass(metal, Q(1, "kg"), row.inputs.get("eta", 1.0))
    agrees(energy_used(row["U"], charge) / Q(1, "kg"), row.expected, row.tolerance)


@pytest.mark.parametrize(
    ("identity", "celsius", "share_lost"),
    [("GAS-H2", 0, 1.0), ("GAS-H2-25", 25, 1.0), ("GAS-ineff", 0, 0.03)],
)
def test_hydrogen_from_lost_charge(identity: str, celsius: float, share_lost: float) -> None:
    known = row(identity)
    volume = hydrogen_volume(known["charge"], 1 - share_lost, Q(celsius, "degC"))
    agrees(volume, known.expected, known.tolerance)


def test_hydrogen_of_a_textbook_exercise() -> None:
    known = row("GAS-OS")
    volume = hydrogen_volume(charge_of(known), 0.0, known["T"], known["p"])
    agrees(volume, known.expected, known.tolerance)


def test_density_by_weighing_in_water() -> None:
    plain, with_air = row("HYD-1"), row("HYD-2")
    no_air = Q(0, "g/cm**3")
    found = hydrostatic_density(plain["m_air"], plain["m_water"], plain["rho_w"], no_air)
    agrees(found, plain.expected, plain.tolerance)
    found = hydrostatic_density(Q(8.63, "g"), Q(7.8, "g"), with_air["rho_w"], with_air["rho_air"])
    agrees(found, with_air.expected, with_air.tolerance)


def test_density_of_a_mixture() -> None:
    known = row("MIX-1")
    masses = [known[metal] for metal in ("Au", "Ag", "Cu")]
    volumes = [known[metal] / known[f"rho_{metal}"] for metal in ("Au", "Ag", "Cu")]
    agrees(mean_density(masses, volumes), known.expected, known.tolerance)


@pytest.mark.parametrize(
    "row", [r for r in rows("GEN-0", "GEN-1") if not r.id.startswith("GEN-um")], ids=lambda r: r.id
)
def test_shrinkage_over_generations(row: Row) -> None:
    agrees(linear_scale([-row["s"]] * int(row["n"].magnitude)), row.expected, row.tolerance)


def test_shrinkage_of_a_mixed_chain() -> None:
    known = row("GEN-mix")
    scale = linear_scale([Q(each, "pct") for each in known["changes"].magnitude])
    agrees(scale, known.expected, known.tolerance)


@pytest.mark.parametrize("row", rows("GEN-um"), ids=lambda r: r.id)
def test_length_lost_over_generations(row: Row) -> None:
    copy = predicted_dimension(row["L"], [-row["s"]] * int(row["n"].magnitude))
    agrees(row["L"] - copy, row.expected, row.tolerance)


def test_mean_thickness_from_the_balance() -> None:
    known = row("THK-4")
    agrees(mean_thickness(ion("Cu2+", known["rho"]), known["m"], known["A"]), known.expected, known.tolerance)


def test_uncertainty_of_mass_and_thickness() -> None:
    """Law of propagation, JCGM 100:2008, 5.1.2."""
    mass = deposited_mass(
        ion("Cu2+"),
        charge_passed(Q(ufloat(2, 0.01), "A"), Q(ufloat(36000, 5), "s")),
        Q(ufloat(0.98, 0.01), ""),
    )
    assert mass.magnitude.nominal_value == pytest.approx(row("UNC-1").expected.magnitude, rel=1e-4)
    assert mass.magnitude.std_dev == pytest.approx(row("UNC-3").expected.magnitude, rel=1e-3)
    copper = ion("Cu2+", Q(ufloat(8.93, 0.03), "g/cm**3"))
    thickness = mean_thickness(copper, mass, Q(ufloat(150, 3), "cm**2")).to("um")
    assert thickness.magnitude.nominal_value == pytest.approx(row("UNC-5").expected.magnitude, rel=1e-4)
    assert thickness.magnitude.std_dev == pytest.approx(row("UNC-6").expected.magnitude, rel=1e-3)


def test_readings_as_a_sheet_and_as_a_trace() -> None:
    held, joined = row("INT-2"), row("INT-1")
    seconds, currents = held["t"].m_as("s"), held["I"].magnitude
    agrees(sheet_charge(seconds, currents).charge, held.expected, held.tolerance)
    agrees(trace_charge(seconds, currents, interval_s=7200).known, joined.expected, joined.tolerance)


def test_trapezoid_of_a_decaying_current() -> None:
    known, hours = row("INT-4"), np.arange(13.0)
    trace = trace_charge(hours * 3600, 2 * np.exp(-hours / 6), interval_s=3600)
    agrees(trace.known, known.expected, known.tolerance)


def test_historic_statements() -> None:
    thick, rate, anode, spoon = row("HIS-4"), row("HIS-5"), row("HIS-8"), row("HIS-10")
    agrees(energised_rate(rate["thickness"], rate["t"]), rate.expected, rate.tolerance)
    per_density = growth_rate(thick.ion(), Q(1, "A/dm**2"))
    density = energised_rate(thick["thickness"], thick["t"]) / per_density * Q(1, "A/dm**2")
    agrees(density, thick.expected, thick.tolerance)
    agrees(growth_rate(anode.ion(), anode["j"]) * anode["t"], anode.expected, anode.tolerance)
    agrees(charge_for_mass(ion("Ag+"), spoon["m"]), spoon.expected, spoon.tolerance)
    zinc, silver = row("HIS-3"), row("HIS-9")
    agrees(ion("Zn2+").equivalent / ion("Cu2+").equivalent, zinc.expected, zinc.tolerance)
    agrees(silver["x"] / silver["n"], silver.expected, silver.tolerance)


@pytest.mark.parametrize("row", rows("UNI-"), ids=lambda r: r.id)
def test_old_units(row: Row) -> None:
    agrees(row["x"], row.expected, row.tolerance)
