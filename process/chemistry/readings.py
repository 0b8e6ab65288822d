"""Several readings of one thing: their mean, and how far they scatter."""

from collections.abc import Sequence
from statistics import stdev

from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.formula import formula
from process.chemistry.terms import THICKNESS, nominal
from records.units import ureg

READINGS = THICKNESS.several("Σd", "readings")


@formula(THICKNESS.called("m", "mean of the readings"), readings=READINGS)
def mean_of_readings(readings: Sequence[Quantity]) -> Quantity:
    """Mean of what an instrument showed at several places; of places that were chosen it is no mean of the wall.

    Equation: m [mm] = Σd [mm] / n
    Errors: no reading; a negative one.
    Source: arithmetic mean, JCGM 100:2008, 4.2.1.

    >>> round(mean_of_readings([182 * ureg.um, 175 * ureg.um, 168 * ureg.um]).m_as("um"), 6)
    175.0
    """
    return sum(readings[1:], start=readings[0]) / len(readings)


@formula(THICKNESS.called("s", "standard deviation of the readings"), readings=THICKNESS.several("d", "readings"))
def scatter_of_readings(readings: Sequence[Quantity]) -> Quantity:
    """Standard deviation of several readings: how much the places differ, and the instrument with them.

    Equation: s [mm] = √(Σ(d [mm] − mean)² / (n − 1))
    Errors: fewer than two readings; a negative one.
    Source: experimental standard deviation, JCGM 100:2008, 4.2.2.

    >>> round(scatter_of_readings([182 * ureg.um, 175 * ureg.um, 168 * ureg.um]).m_as("um"), 6)
    7.0
    """
    if len(readings) < 2:
        raise ChemistryError("readings", "one reading does not scatter; take at least two")
    # By the numbers shown: the ± of each is a part of why they scatter, and is not counted twice.
    return ureg.Quantity(stdev(float(nominal(each.m_as("mm"))) for each in readings), "mm")
