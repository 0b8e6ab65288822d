"""Hydrometer, bath balance, water, air and mixtures against outside figures.

Each row of tests/data/check_values.json names its source and whether its text was seen."""

import iapws
import pytest
from uncertainties import ufloat

from process.chemistry.additions import acid_in, acid_volume, mass_to_add, strength_as_bought, volume_to_replace
from process.chemistry.agreement import Agreement, compare
from process.chemistry.anodes import anode_loss, drift
from process.chemistry.baths import copper_gained, ledger, predicted_acid, predicted_salt
from process.chemistry.constants import ACID_PER_COPPER, COPPER_IN_SALT, COPPER_SULPHATE, SULPHURIC_ACID
from process.chemistry.density import AIR_DENSITY, fill_masses, hydrostatic_density, mass_of, mean_density
from process.chemistry.dimensions import deviation, linear_scale, predicted_dimension
from process.chemistry.errors import ChemistryError
from process.chemistry.faraday import deposited_mass
from process.chemistry.hydrometer import (
    degrees_baume,
    density_of_gravity,
    expected_density,
    light_gravity,
    specific_gravity,
)  # fmt: skip
from process.chemistry.metals import ion
from process.chemistry.mixtures import hollow_share, mixture_density, share_of_heavier
from process.chemistry.solutions import chloride_found, sulphuric_acid_found
from process.chemistry.water import air_density, water_density
from records.units import ureg
from tests.chemistry.check_rows import Row, row, rows
from tests.chemistry.test_check_values import agrees

Q = ureg.Quantity
GRAM_PER_CM3 = ureg.g / ureg.cm**3


def per_cm3(*densities: float) -> list:
    return [each * GRAM_PER_CM3 for each in densities]


@pytest.mark.parametrize("known", rows("BE-145-", "BE-1443-"), ids=lambda each: each.id)
def test_degrees_baume_of_a_named_modulus(known: Row) -> None:
    modulus = 144.3 if "1443" in known.id else 145
    agrees(specific_gravity(known["Be"].magnitude, modulus), known.expected, known.tolerance)


@pytest.mark.parametrize("known", rows("BE-light-"), ids=lambda each: each.id)
def test_degrees_baume_of_light_liquids(known: Row) -> None:
    agrees(light_gravity(known["Be"].magnitude), known.expected, known.tolerance)


def test_degrees_baume_turned_round() -> None:
    known = row("BE-inv")
    found = degrees_baume(known["SG"], 145).magnitude
    assert found == pytest.approx(known.expected.magnitude, rel=known.tolerance)
    with pytest.raises(ChemistryError, match="degrees: cannot reach the modulus"):
        specific_gravity(145, 145)


def test_density_from_a_hydrometer() -> None:
    water = water_density(Q(15, "degC"))
    assert density_of_gravity(specific_gravity(24, 144.3), water).magnitude == pytest.approx(1.1984, abs=2e-4)


@pytest.mark.parametrize("known", rows("SD-mix-"), ids=lambda each: each.id)
def test_density_expected_of_a_bath(known: Row) -> None:
    """Model figures; no measurement was seen. Tolerance half a per cent, as the row says."""
    agrees(expected_density(known["salt"], known["acid"]), known.expected, known.tolerance)


def test_additions_and_reagents() -> None:
    known = row("BATH-add1")
    agrees(mass_to_add(known["c1"], known["c0"], known["V"]), known.expected, known.tolerance)
    known = row("BATH-M-H2SO4")
    strength = strength_as_bought(known["density"], known["w"]) / SULPHURIC_ACID.quantity
    agrees(strength, known.expected, known.tolerance)
    assert acid_in(acid_volume(Q(168, "g"))).magnitude == pytest.approx(168)


def test_copper_held_turned_round_and_in_moles() -> None:
    salt, moles = row("BATH-salt50"), row("BATH-mol200")
    agrees(salt["Cu"] / COPPER_IN_SALT.quantity, salt.expected, salt.tolerance)
    agrees(Q(200, "g/L") / COPPER_SULPHATE.quantity, moles.expected, moles.tolerance)


def test_drift_of_a_bath_and_insoluble_anodes() -> None:
    known = row("BATH-anode")
    found = drift(ion("Cu2+"), known["charge"], known["eta_anode"], known["eta_cathode"], known["V"])
    agrees(found, known.expected, known.tolerance)
    copper = deposited_mass(ion("Cu2+"), Q(1, "A*h")) / Q(1, "A*h")
    salt, acid = row("BATH-insol"), row("BATH-insolacid")
    agrees(copper / COPPER_IN_SALT.quantity, salt.expected, salt.tolerance)
    agrees(copper * ACID_PER_COPPER.quantity, acid.expected, acid.tolerance)


def test_chloride_brought_in_and_acid_of_rain() -> None:
    """A handbook prints 12 mg/L where its own figures give 10.9: CHEMISTRY, discrepancies, 10."""
    known, rain = row("BATH-Cl"), row("BATH-naoh2")
    agrees(chloride_found(known["V"], known["c"], known["bath"]), known.expected, known.tolerance)
    found = sulphuric_acid_found(rain["V_titrant"], rain["c"], rain["V_sample"]) / SULPHURIC_ACID.quantity
    agrees(found, rain.expected, rain.tolerance)


@pytest.mark.parametrize("known", rows("WAT-OS", "WAT-TAN"), ids=lambda each: each.id)
def test_density_of_water(known: Row) -> None:
    """OpenStax and the formula's own figures; Kell (1975) is another formula, 3 in a million below."""
    agrees(water_density(Q(known["T"].magnitude, "degC")), known.expected, max(known.tolerance, 6e-6))


@pytest.mark.parametrize("celsius", [5, 15, 20, 22, 30, 39])
def test_density_of_water_against_the_steam_tables(celsius: float) -> None:
    """IAPWS-95 by the package iapws, at 101.325 kPa."""
    reference = iapws.IAPWS95(T=273.15 + celsius, P=0.101325).rho
    assert water_density(Q(celsius, "degC")).m_as("kg/m**3") == pytest.approx(reference, rel=5e-6)


def test_water_that_is_ice_or_hot_is_refused() -> None:
    with pytest.raises(ChemistryError, match="temperature: the water must be between 0 and 40"):
        water_density(Q(41, "degC"))


def test_density_of_air() -> None:
    known = row("AIR-1")
    agrees(air_density(Q(20, "degC"), known["p"], Q(50, "pct")), known.expected, known.tolerance)


def test_air_that_nobody_read_is_that_of_a_room() -> None:
    """Between 18 and 24 °C, 990 and 1030 hPa, 30 and 70 % it lies within 5 % of the density taken."""
    rooms = [(c, p, h) for c in (18, 24) for p in (990, 1030) for h in (30, 70)]
    for celsius, hpa, percent in rooms:
        found = air_density(Q(celsius, "degC"), Q(hpa, "hPa"), Q(percent, "pct"))
        assert AIR_DENSITY.m_as("g/cm**3") == pytest.approx(found.m_as("g/cm**3"), rel=0.05)
    assert AIR_DENSITY.m_as("kg/m**3") == pytest.approx(row("AIR-1").expected.m_as("kg/m**3"), rel=0.002)


@pytest.mark.parametrize("identity", ["HYD-3", "HYD-4"])
def test_density_of_bone_and_rock_in_water(identity: str) -> None:
    known = row(identity)
    found = hydrostatic_density(known["m_air"], known["m_water"], Q(1, "g/cm**3"), Q(0, "g/cm**3"))
    agrees(found.m_as("g/cm**3") * ureg.Unit(known.expected.units), known.expected, known.tolerance)


def test_two_milligrams_of_doubt_dominate_a_coin() -> None:
    """0.16 % for 1 mg on each reading: CHEMISTRY 6, by propagation (JCGM 100)."""
    found = hydrostatic_density(Q(ufloat(8.63, 0.001), "g"), Q(ufloat(7.8, 0.001), "g"), Q(0.998207, "g/cm**3"))
    assert found.magnitude.std_dev / found.magnitude.nominal_value == pytest.approx(0.0016, rel=0.05)


@pytest.mark.parametrize(
    ("identity", "shares", "densities"),
    [
        ("MIX-3", (0.925, 0.075), (10.49, 8.96)),
        ("MIX-5", (22, 2), (19.3, 8.96)),
        ("MIX-10", (0.6, 0.4), (7.3, 11.34)),
    ],
)
def test_density_of_alloys(identity: str, shares: tuple, densities: tuple) -> None:
    agrees(mixture_density(shares, per_cm3(*densities)), row(identity).expected, row(identity).tolerance)


def test_a_piece_lighter_than_each_of_its_metals_is_hollow() -> None:
    """SCENARIO 2: 8.36 g/cm³ of copper on tin-lead solder of 8.52 (trade table, from memory): 1 − 8.36/8.52."""
    assert hollow_share(*per_cm3(8.36, 8.52)).m_as("pct") == pytest.approx(1.878, abs=1e-3)
    assert hollow_share(*per_cm3(8.96, 8.92)).magnitude < 0


@pytest.mark.parametrize("known", rows("MIX-6", "MIX-7", "MIX-8"), ids=lambda each: each.id)
def test_share_of_gold_by_density(known: Row) -> None:
    density = known.inputs.get("rho", 15.0 * GRAM_PER_CM3)
    agrees(share_of_heavier(density, *per_cm3(19.3, 10.49)), known.expected, known.tolerance)


def test_heavier_part_must_be_the_heavier() -> None:
    with pytest.raises(ChemistryError, match="heavier: must be denser"):
        share_of_heavier(*per_cm3(11, 10.49, 19.3))


@pytest.mark.parametrize(("fill", "identity"), [(11.34, "MIX-12"), (10.86, "MIX-13")])
def test_a_copy_may_be_as_dense_as_its_coin(fill: float, identity: str) -> None:
    """A coin of 17.20 g of silver, 24 mm, in a copper shell of 0.25 mm: the old backing metal cannot be told apart."""
    volume = 17.20 / 10.49
    shell = _shell_share_of(volume)
    masses = [mass_of(Q(v, "cm**3"), rho) for v, rho in zip((shell, volume - shell), per_cm3(8.96, fill), strict=True)]
    found = mean_density(masses, [Q(volume, "cm**3"), Q(0, "cm**3")])
    agrees(found, row(identity).expected, row(identity).tolerance)


def _shell_share_of(volume_cm3: float) -> float:
    """Copper of 0.25 mm round a disc of 24 mm: its room, from the discs without and within."""
    radius, wall = 1.2, 0.025
    height = volume_cm3 / (3.141592653589793 * radius**2)
    return volume_cm3 - 3.141592653589793 * (radius - wall) ** 2 * (height - 2 * wall)


def test_volume_goes_with_the_cube() -> None:
    known = row("GEN-vol")
    agrees(linear_scale([-known["s"]]) ** 3, known.expected, known.tolerance)


def test_shrinkage_of_type_faces_adds_up() -> None:
    """0.0038 % at each step of copying: common practice of the trade, no published source."""
    face = Q(100, "mm")
    lost = [(face - predicted_dimension(face, [Q(-0.0038, "pct")] * steps)).m_as("um") for steps in (1, 10)]
    assert lost == pytest.approx([3.80, 37.99], abs=0.005)


def test_drift_of_the_lightship_medal() -> None:
    """SCENARIO 8: 45.0 in 1811, 44.82 (−0.40 %), 44.78 (−0.49 % in total)."""
    found = [deviation(Q(size, "mm"), Q(45.0, "mm")).m_as("pct") for size in (44.82, 44.78)]
    assert [round(each, 2) for each in found] == [-0.40, -0.49]


def test_a_statue_of_five_and_a_half_feet() -> None:
    """1.67 m is 5.5 ft: common practice, no published source; the foot of 0.3048 m is exact."""
    assert Q(1.67, "m").m_as("ft") == pytest.approx(5.5, abs=0.03)


def test_the_anode_loses_what_the_cathode_gains() -> None:
    """Common practice, no published source; by Faraday's law at both electrodes with full efficiency."""
    charge = Q(36.85, "A*h")
    gained = deposited_mass(ion("Cu2+"), charge)
    before = Q(4012, "g")
    assert anode_loss(ion("Cu2+"), before, before - gained, charge).m_as("") == pytest.approx(1)
    assert drift(ion("Cu2+"), charge, 1.0, 1.0, Q(60, "L")).magnitude == pytest.approx(0)
    assert copper_gained(gained, gained, Q(0, "g")).magnitude == pytest.approx(0)


def test_balance_of_the_scenario() -> None:
    """SCENARIO 6 and 11: 347 g from the anodes, 335.7 g deposited, 3.1 g of sludge, 0.5 L carried out."""
    gained = copper_gained(Q(347, "g"), Q(6.9 + 43.18 + 10.44 + 24.52 + 58.75 + 191.9, "g"), Q(3.1, "g"))
    found = Q(ufloat(209.8, 0.3), "g/L"), Q(ufloat(60.2, 0.3), "g/L")
    salt = predicted_salt(found[0], gained, Q(0.5, "L"), Q(60, "L"))
    acid = predicted_acid(found[1], gained, Q(0.5, "L"), Q(60, "L"))
    assert gained.magnitude == pytest.approx(8.2, abs=0.05)
    assert (round(salt.magnitude.nominal_value, 1), round(acid.magnitude.nominal_value, 1)) == (208.6, 59.5)
    assert compare(salt, Q(ufloat(209.3, 0.3), "g/L")).agreement is Agreement.WITHIN
    assert compare(acid, Q(ufloat(59.1, 0.3), "g/L")).agreement is Agreement.WITHIN
    assert compare(salt, Q(ufloat(212.3, 0.3), "g/L")).agreement is Agreement.BEYOND


@pytest.mark.parametrize("spreads", [(0.0, 0.0), (0.3, 0.0), (0.0, 0.3)])
def test_an_error_that_nobody_stated_is_not_taken_as_none(spreads: tuple[float, float]) -> None:
    """JCGM 100, 5.1.2 asks for the uncertainty of each input."""
    one, other = (Q(ufloat(v, u) if u else v, "g/L") for v, u in zip((208.6, 209.8), spreads, strict=True))
    found = compare(one, other)
    assert (found.agreement, found.allowed) == (Agreement.UNKNOWN, None)


def test_what_was_added_counts_in_the_prediction() -> None:
    found, nothing = Q(203.4, "g/L"), Q(0, "g")
    salt = predicted_salt(found, nothing, Q(0, "L"), Q(60, "L"), Q(396, "g"))
    acid = predicted_acid(Q(57.2, "g/L"), nothing, Q(0, "L"), Q(60, "L"), Q(168, "g"))
    assert (salt.magnitude, acid.magnitude) == pytest.approx((210, 60))


def test_corrections_of_the_scenario() -> None:
    """SCENARIO 6 and 11: 396 g of salt, 168 g or 95.37 mL of acid; trade guide B7: 6.4 L."""
    bath = Q(60, "L")
    assert mass_to_add(Q(210, "g/L"), Q(203.4, "g/L"), bath).magnitude == pytest.approx(396)
    acid = mass_to_add(Q(60, "g/L"), Q(57.2, "g/L"), bath)
    assert acid_volume(acid).magnitude == pytest.approx(95.37, abs=0.005)
    assert volume_to_replace(Q(235, "g/L"), Q(210, "g/L"), bath).magnitude == pytest.approx(6.38, abs=0.005)


def test_ledger_of_the_scenario() -> None:
    """SCENARIO 7: after each run."""
    charges = [Q(each, "A*h") for each in (7.87, 36.85, 8.94, 20.95, 50.16, 163.50)]
    after = [round(each.magnitude, 2) for each in ledger(Q(640, "A*h"), charges)]
    assert after == [647.87, 684.72, 693.66, 714.61, 764.77, 928.27]


def test_alternative_fills_of_the_medal() -> None:
    """SCENARIO 8: shells of 29.62 g; 80.2, 64.4 and 35.1 g against 71.36 g."""
    room, shells = Q(4.7693, "cm**3"), Q(29.62, "g")
    found = fill_masses(room, shells, per_cm3(10.6, 7.30, 1.15))
    assert [round(each.m_as("g"), 1) for each in found] == [80.2, 64.4, 35.1]
