"""Mean and scatter of several readings of a wall."""

import statistics

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from process.chemistry.errors import ChemistryError
from process.chemistry.readings import mean_of_readings, scatter_of_readings
from records.units import ureg
from tests.chemistry.check_rows import row
from tests.chemistry.test_check_values import agrees

READINGS = st.lists(st.floats(0.001, 50), min_size=2, max_size=30)


def mm(*values):
    return [ureg.Quantity(value, "mm") for value in values]


def test_mean_and_standard_deviation_of_five_readings() -> None:
    mean, scatter = row("THK-5"), row("THK-6")
    readings = list(mean["readings"])
    agrees(mean_of_readings(readings), mean.expected, mean.tolerance)
    agrees(scatter_of_readings(readings), scatter.expected, scatter.tolerance)


@given(READINGS)
def test_they_are_those_of_numpy_and_of_the_standard_library(values) -> None:
    assert mean_of_readings(mm(*values)).m == pytest.approx(float(np.mean(values)))
    found = scatter_of_readings(mm(*values)).m
    assert found == pytest.approx(float(np.std(values, ddof=1)), rel=1e-6, abs=1e-9)
    assert found == pytest.approx(statistics.stdev(values), rel=1e-6, abs=1e-9)


def test_the_doubt_of_each_reading_is_in_the_mean() -> None:
    """0.02 mm on each of four: 0.01 mm on their mean (JCGM 100, 4.2.3)."""
    readings = mm(*(ufloat(value, 0.02) for value in (0.6, 0.5, 0.4, 0.5)))
    assert mean_of_readings(readings).m.std_dev == pytest.approx(0.01)


def test_readings_all_alike_do_not_scatter_even_with_a_doubt() -> None:
    alike = mm(ufloat(0.5, 0.02), ufloat(0.5, 0.02))
    assert scatter_of_readings(alike).magnitude == 0
    assert scatter_of_readings(mm(0.5, 0.5, 0.5)).m == 0


def test_one_reading_does_not_scatter() -> None:
    with pytest.raises(ChemistryError, match="readings: one reading does not scatter"):
        scatter_of_readings(mm(0.5))
