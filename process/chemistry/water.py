"""Density of the water and of the air in which a piece is weighed."""

from pint import Quantity
from uncertainties import umath

from process.chemistry.constants import Constant
from process.chemistry.errors import ChemistryError
from process.chemistry.formula import formula
from process.chemistry.terms import DENSITY, RATIO, Rule, Term, nominal
from records.units import ureg

WATER_TEMPERATURE = Term("t", "temperature of the water", "degC", Rule.ANY)
AIR_TEMPERATURE = Term("t", "temperature of the air", "degC", Rule.ANY)
PRESSURE = Term("p", "air pressure", "hPa", Rule.POSITIVE)
HUMIDITY = RATIO.called("h", "relative humidity", Rule.SHARE)
LIQUID = (0.0, 40.0)  # °C, the span of the formula
DENSEST = Constant("ρₘ", "densest water, air-free", ureg.Quantity(0.99997495, "g/cm**3"), "g/cm**3",
                   "Tanaka et al., Metrologia 38 (2001) 301")  # fmt: skip


@formula(DENSITY.called("ρ", "density of water"), DENSEST, temperature=WATER_TEMPERATURE)
def water_density(temperature: Quantity) -> Quantity:
    """Density of pure water between 0 and 40 °C at the pressure of the air.

    Equation: ρ [g/cm³] = ρₘ [g/cm³]·(1 − (t [°C] − 3.983035)²·(t [°C] + 301.797)/(522528.9·(t [°C] + 69.34881)))
    Errors: a temperature below 0 or above 40 °C.
    Source: Tanaka et al., Metrologia 38 (2001) 301; agrees with IAPWS-95 to 3 parts in a million.

    >>> round(water_density(ureg.Quantity(20, "degC")).magnitude, 7)
    0.9982067
    """
    celsius = temperature.m_as("degC")
    if not LIQUID[0] <= nominal(celsius) <= LIQUID[1]:
        raise ChemistryError("temperature", "the water must be between 0 and 40 °C; read the thermometer again")
    loss = (celsius - 3.983035) ** 2 * (celsius + 301.797) / (522528.9 * (celsius + 69.34881))
    return DENSEST.quantity * (1 - loss)


@formula(
    DENSITY.called("ρ", "density of air"), temperature=AIR_TEMPERATURE, pressure=PRESSURE, humidity=HUMIDITY
)  # fmt: skip
def air_density(temperature: Quantity, pressure: Quantity, humidity: Quantity) -> Quantity:
    """Density of moist air, good to 2 parts in ten thousand in a room.

    Equation: ρ [g/cm³] = (0.00034848·p [hPa] − 0.0009·h [1]·exp(0.061·t [°C])) / (273.15 + t [°C])
    Errors: a pressure of zero or less; a humidity below 0 or above 100 %.
    Source: simplified CIPM formula as in OIML R 111, from memory.

    >>> warm, pressure, damp = ureg.Quantity(20, "degC"), ureg.Quantity(1013.25, "hPa"), ureg.Quantity(50, "pct")
    >>> round(air_density(warm, pressure, damp).magnitude, 6)
    0.001199
    """
    celsius, damp = temperature.m_as("degC"), humidity.m_as("")
    grams = 0.00034848 * pressure.m_as("hPa") - 0.0009 * damp * umath.exp(0.061 * celsius)
    return ureg.Quantity(grams / (273.15 + celsius), "g/cm**3")
