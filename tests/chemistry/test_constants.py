"""Constants and atomic weights against independent tables: scipy.constants and periodictable."""

import periodictable
import pytest
from scipy import constants as codata

from process.chemistry import constants, elements
from process.chemistry.errors import ChemistryError
from process.chemistry.metals import IONS, ion
from records.units import ureg


@pytest.mark.parametrize(
    ("ours", "unit", "theirs"),
    [
        (constants.ELEMENTARY_CHARGE, "C", "elementary charge"),
        (constants.AVOGADRO, "1/mol", "Avogadro constant"),
        (constants.BOLTZMANN, "J/K", "Boltzmann constant"),
        (constants.FARADAY, "C/mol", "Faraday constant"),
        (constants.MOLAR_GAS, "J/(mol*K)", "molar gas constant"),
        (constants.ATMOSPHERE, "Pa", "standard atmosphere"),
    ],
)
def test_constants_agree_with_codata(ours: constants.Constant, unit: str, theirs: str) -> None:
    assert ours.quantity.m_as(unit) == pytest.approx(codata.value(theirs), rel=1e-9)


@pytest.mark.parametrize("element", sorted(elements.ATOMIC_WEIGHTS))
def test_atomic_weights_agree_with_an_independent_table(element: str) -> None:
    assert elements.ATOMIC_WEIGHTS[element] == pytest.approx(periodictable.elements.symbol(element).mass, rel=1e-4)


@pytest.mark.parametrize(
    ("ours", "compound"),
    [
        (constants.COPPER_SULPHATE, "CuSO4+5H2O"),
        (constants.SULPHURIC_ACID, "H2SO4"),
        (constants.COPPER, "Cu"),
        (constants.CHLORIDE, "Cl"),
    ],
)
def test_molar_masses_agree_with_an_independent_table(ours: constants.Constant, compound: str) -> None:
    assert ours.quantity.m_as("g/mol") == pytest.approx(periodictable.formula(compound).mass, rel=1e-4)


def test_composite_constants_follow_from_the_molar_masses() -> None:
    assert constants.COPPER_IN_SALT.quantity.magnitude == pytest.approx(0.25451, abs=1e-5)  # 63.546/249.677
    assert constants.ACID_PER_COPPER.quantity.magnitude == pytest.approx(1.5433, abs=1e-4)  # 98.072/63.546


def test_every_metal_names_the_source_of_its_figures() -> None:
    for code, metal in IONS.items():
        assert metal.code == code
        assert 1 <= metal.valence_count <= 6
        assert all(metal.fact(symbol).source for symbol in ("M", "z", "k", "ρ"))


@pytest.mark.parametrize("code", ["Cu2+", "Cu+", "Ag+", "Au+", "Au3+", "Ni2+", "Fe2+", "Zn2+", "Sn2+", "Sn4+"])
def test_the_trades_metals_are_known(code: str) -> None:
    assert ion(code).code == code


@pytest.mark.parametrize("element", ["Cu", "Ag", "Au", "Ni", "Fe", "Zn", "Sn", "Pb", "Cd", "Cr", "Pd", "Rh", "Pt"])
def test_densities_are_near_an_independent_table(element: str) -> None:
    metal = next(each for each in IONS.values() if each.element == element)
    assert metal.density.m_as("g/cm**3") == pytest.approx(periodictable.elements.symbol(element).density, rel=0.01)


def test_an_unknown_ion_is_refused_with_the_list_of_known_ones() -> None:
    with pytest.raises(ChemistryError, match=r"ion: “Cu5\+” is not known; choose one of Cu2\+, Cu\+, Ag\+"):
        ion("Cu5+")


def test_density_may_be_the_records_own() -> None:
    own = ion("Cu2+", ureg.Quantity(8890, "kg/m**3"))
    assert own.density.magnitude == pytest.approx(8.89)
    assert own.fact("ρ").source == "stated with this record"


@pytest.mark.parametrize("value", [0, -8.9, float("nan"), float("inf")])
def test_an_impossible_density_is_refused(value: float) -> None:
    with pytest.raises(ChemistryError, match="density: must be a number above zero"):
        ion("Cu2+", ureg.Quantity(value, "g/cm**3"))


def test_a_density_of_another_kind_is_refused() -> None:
    with pytest.raises(ChemistryError, match=r"density: 8\.9 gram is no density"):
        ion("Cu2+", ureg.Quantity(8.9, "g"))
