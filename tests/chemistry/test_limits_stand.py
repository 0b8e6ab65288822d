"""Where the rules of this register draw their lines: just inside and just outside of each."""

import pytest
from uncertainties import ufloat

from process.chemistry.agreement import Agreement, compare
from process.chemistry.segments import is_uneven
from process.chemistry.series import sheet_charge
from records.units import ureg


@pytest.mark.parametrize(("later", "drifts"), [(1.05, 0), (1.051, 1), (0.95, 0), (0.949, 1)])
def test_a_current_that_moved_by_more_than_a_twentieth_has_drifted(later: float, drifts: int) -> None:
    assert len(sheet_charge([0, 3600, 7200], [1.0, later, later]).drifts) == drifts


@pytest.mark.parametrize(("deviation", "uneven"), [(0.10, False), (0.101, True), (-0.10, False), (-0.101, True)])
def test_a_tenth_off_the_mean_of_the_rail_is_uneven(deviation: float, uneven: bool) -> None:
    assert is_uneven(deviation) is uneven


@pytest.mark.parametrize(("apart", "found"), [(1.99, Agreement.WITHIN), (2.01, Agreement.BEYOND)])
def test_two_standard_uncertainties_apart_still_agree(apart: float, found: Agreement) -> None:
    """JCGM 100:2008, 6.3.3: coverage factor 2; of two figures of 3 and 4 the difference has 5."""
    one, other = ureg.Quantity(ufloat(200, 3), "g/L"), ureg.Quantity(ufloat(200 + 5 * apart, 4), "g/L")
    assert compare(one, other).agreement is found
