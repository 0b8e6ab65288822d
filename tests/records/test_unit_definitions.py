"""Our short list of unit definitions against pint's own full registry, an independent reference."""

import pint
import pytest

from records.units import CHOICES, SUFFIXES, ureg

THEIRS = pint.UnitRegistry(autoconvert_offset_to_baseunit=True)
THEIRS.define("@alias percent = pct")
THEIRS.define("money = [currency]")  # no unit of science; the price list names the currency
OFFERED = sorted({choice.pint_unit for choices in CHOICES.values() for choice in choices} | set(SUFFIXES.values()))
FURTHER = ["kelvin", "bar", "hPa", "atm", "kWh", "mS/cm", "kg/m**3", "A/L", "yard", "g/(A*h)", "quart", "lb/ft**3"]


@pytest.mark.parametrize("unit", OFFERED + FURTHER)
def test_a_unit_means_what_the_full_registry_says(unit):
    if unit in ("degC", "degF"):
        ours, theirs = (r.Quantity(70.0, unit).m_as("kelvin") for r in (ureg, THEIRS))
    else:
        ours, theirs = (r.Quantity(1.0, unit).to_base_units().magnitude for r in (ureg, THEIRS))
        scale = THEIRS.Unit(unit).dimensionality.get("[mass]", 0)  # our base of mass is the gram, theirs the kilogram
        theirs *= 1000.0**scale
    assert ours == pytest.approx(theirs, rel=1e-12)


@pytest.mark.parametrize("unit", OFFERED)
def test_a_unit_has_the_dimensions_that_the_full_registry_says(unit):
    assert str(ureg.Unit(unit).dimensionality) == str(THEIRS.Unit(unit).dimensionality)


@pytest.mark.parametrize("constant", ["c", "e", "k", "elementary_charge"])
def test_no_letter_is_a_physical_constant_by_accident(constant):
    with pytest.raises(pint.UndefinedUnitError):
        ureg.Unit(constant)
