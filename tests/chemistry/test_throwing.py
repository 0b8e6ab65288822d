"""Throwing power: rows TP-* and WA-* of check_values.json (Field and Haring–Blum seen in trade texts)."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from process.chemistry.errors import ChemistryError
from process.chemistry.throwing import (
    distance_ratio,
    factor_of_two_places,
    field_number,
    haring_blum,
    heatley_number,
    metal_ratio,
    metal_ratio_expected,
    tafel_slope,
    wagner_number,
)
from records.units import ureg
from tests.chemistry.check_rows import row, rows

Q = ureg.Quantity
FORMULAS = {"field": field_number, "hb": haring_blum, "heat": heatley_number, "lim": field_number}


@pytest.mark.parametrize("row", rows("TP-"), ids=lambda r: r.id)
def test_throwing_power(row) -> None:
    found = FORMULAS[row.id.split("-")[1]](row["K"], row["M"])
    assert found.m_as("pct") == pytest.approx(row.expected.m_as("pct"), rel=row.tolerance)


def test_wagner_number_from_a_measured_slope() -> None:
    known = row("WA-3")
    found = wagner_number(known["slope"], known["kappa"], known["l"])
    assert found.m_as("") == pytest.approx(known.expected.magnitude, rel=known.tolerance)


@pytest.mark.parametrize(("a_m2", "wagner"), [(200, 0.103), (50, 0.411)])
def test_wagner_number_where_the_slope_is_that_of_tafel(a_m2, wagner) -> None:
    """Wa = κRT/(αF·j·l), κ 20 S/m, l 0.05 m, α 0.5, 25 °C: worked out by hand with CODATA R and F."""
    slope = tafel_slope(Q(a_m2, "A/m**2"), Q(298.15, "K"), 0.5)
    assert wagner_number(slope, Q(20, "S/m"), Q(0.05, "m")).m_as("") == pytest.approx(wagner, abs=5e-4)


def test_ratios_of_a_cell() -> None:
    assert distance_ratio(Q(250, "mm"), Q(5, "cm")).magnitude == pytest.approx(5)
    assert metal_ratio(Q(3.5, "g"), Q(1, "g")).magnitude == pytest.approx(3.5)


@given(st.floats(1.1, 20), st.floats(1.0, 20))
def test_the_expected_ratio_gives_the_cells_own_back(distances, metal) -> None:
    power = field_number(distances, metal)
    assert metal_ratio_expected(distances, power).magnitude == pytest.approx(metal)


@given(st.floats(-99, 100))
def test_places_equally_far_grow_alike_in_every_bath(percent) -> None:
    assert metal_ratio_expected(1.0, Q(percent, "pct")).magnitude == pytest.approx(1.0)


def test_factor_of_two_places_is_the_thinner_over_the_mean() -> None:
    assert factor_of_two_places(3.0).magnitude == pytest.approx(1.0 / 2.0)  # 1 and 3, mean 2
    assert factor_of_two_places(1.0).magnitude == pytest.approx(1.0)


@pytest.mark.parametrize(
    "attempt",
    [
        lambda: field_number(1, 1),
        lambda: heatley_number(1, 1),
        lambda: metal_ratio_expected(2, Q(-100, "pct")),
        lambda: factor_of_two_places(0.5),
        lambda: haring_blum(0, 1),
        lambda: metal_ratio(Q(1, "g"), Q(0, "g")),
    ],
)
def test_what_the_cell_cannot_tell_is_refused(attempt) -> None:
    with pytest.raises(ChemistryError):
        attempt()
