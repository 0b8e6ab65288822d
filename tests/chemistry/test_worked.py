"""Every derived figure opens to its working."""

import pytest
from uncertainties import ufloat

from process.chemistry.deposit import mean_thickness
from process.chemistry.dimensions import fill_volume, predicted_dimension
from process.chemistry.errors import ChemistryError
from process.chemistry.faraday import deposited_mass
from process.chemistry.judgement import judge_efficiency
from process.chemistry.metals import ion
from process.chemistry.plan import cathode_area, relief_disc_area
from process.chemistry.worked import worked, written
from records.units import ureg

Q = ureg.Quantity
COPPER = ion("Cu2+")


def test_a_working_shows_formula_inputs_constants_and_source() -> None:
    shown = worked(
        deposited_mass, ion=COPPER, charge=Q(36.85, "A*h"), efficiency=0.985, evidence={"charge": "measured"}
    )
    assert shown.title == "Mass of metal that a charge deposits"
    assert shown.equation == "m = k·Q·η"
    assert shown.substitution == "m = (1.185494 g/(A·h)) × 36.85 A·h × 0.985 = 43.0302 g"
    assert [(each.symbol, each.text, each.evidence) for each in shown.inputs] == [
        ("Q", "36.85 A·h", "measured"),
        ("η", "0.985", ""),
    ]
    assert [each.symbol for each in shown.constants] == ["k", "M", "z", "F"]
    assert all(each.source for each in shown.constants)
    assert shown.source.startswith("Faraday’s law")
    assert shown.quantity.m_as("g") == pytest.approx(43.0302, abs=5e-5)


def test_a_working_carries_uncertainty_to_its_result() -> None:
    shown = worked(mean_thickness, ion=COPPER, mass=Q(22.05, "g"), area=Q(ufloat(40.2, 0.8), "cm**2"))
    assert shown.substitution == "d = 22.05 g / ((8.92 g/cm³) × (0.4020 ± 0.0080) dm²) = (0.615 ± 0.012) mm"
    assert shown.result.uncertainty == pytest.approx(0.6149 * 0.8 / 40.2, rel=1e-3)
    assert shown.inputs[0].uncertainty is None


def test_a_doubt_says_whose_share_it_lacks() -> None:
    """A mass without ± may err too: the ± of the thickness holds the area's alone."""
    lacking = worked(mean_thickness, ion=COPPER, mass=Q(22.05, "g"), area=Q(ufloat(40.2, 0.8), "cm**2"))
    whole = worked(mean_thickness, ion=COPPER, mass=Q(ufloat(22.05, 0.01), "g"), area=Q(ufloat(40.2, 0.8), "cm**2"))
    none = worked(mean_thickness, ion=COPPER, mass=Q(22.05, "g"), area=Q(40.2, "cm**2"))
    assert lacking.doubt == "± is one standard uncertainty; of m none was stated, so theirs is not in it."
    assert (whole.doubt, none.doubt) == ("± is one standard uncertainty.", "")


def test_typed_units_are_shown_in_the_units_of_the_formula() -> None:
    shown = worked(relief_disc_area, diameter=Q(2, "inch"))
    assert shown.substitution == "A = π × (50.8 mm)²/4 × 1 = 0.202683 dm²"


def test_sums_and_products_are_written_out() -> None:
    area = worked(cathode_area, areas=[Q(0.402, "dm**2"), Q(0.1, "dm**2")])
    length = worked(predicted_dimension, original=Q(168, "mm"), changes=[-0.001, 0.0018], skin=Q(0.25, "mm"))
    fill = worked(fill_volume, original=Q(1.5, "cm**3"), changes=[-0.5], shells=Q(0.1, "cm**3"))
    assert area.substitution == "A = (0.402 dm² + 0.1 dm²) = 0.502 dm²"
    assert area.inputs[0].text == "0.402 dm²; 0.1 dm²"
    assert length.substitution == "D = 168 mm × ((1 − 0.001) × (1 + 0.0018)) + 2 × 0.25 mm = 168.634 mm"
    assert fill.substitution == "V = 1.5 cm³ × (1 − 0.5)³ − 0.1 cm³ = 0.0875 cm³"


def test_a_working_refuses_what_its_formula_refuses() -> None:
    with pytest.raises(ChemistryError, match="area: must be more than zero"):
        worked(mean_thickness, ion=COPPER, mass=Q(1, "g"), area=Q(0, "dm**2"))


def test_what_is_no_formula_has_no_working() -> None:
    with pytest.raises(ChemistryError, match="judge_efficiency is no formula"):
        worked(judge_efficiency, efficiency=0.9)


def test_figures_are_written_to_some_digits_with_their_unit() -> None:
    assert written(Q(21.458321, "um/h"), "um/h") == "21.4583 µm/h"
    assert written(Q(0.98843, ""), "") == "0.98843"
    assert written(Q(96485.33212, "C/mol"), "C/mol", 8) == "96485.332 C/mol"
