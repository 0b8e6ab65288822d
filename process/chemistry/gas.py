"""Gas and energy: what the charge did besides depositing metal."""

from pint import Quantity

from process.chemistry.constants import ATMOSPHERE, FARADAY, MOLAR_GAS
from process.chemistry.formula import formula
from process.chemistry.terms import CHARGE, EFFICIENCY, RATIO, VOLTAGE, Rule, Term
from records.units import ureg

GAS_VOLUME = Term("V", "volume of gas", "L")
TEMPERATURE = Term("T", "temperature", "K", Rule.POSITIVE)
PRESSURE = Term("p", "pressure", "kPa", Rule.POSITIVE)
ENERGY = Term("E", "energy", "kWh")
ROOM = ureg.Quantity(293.15, "K")  # 20 °C


@formula(
    GAS_VOLUME,
    FARADAY,
    MOLAR_GAS,
    charge=CHARGE,
    efficiency=EFFICIENCY.called("η", "cathode efficiency", Rule.SHARE),
    temperature=TEMPERATURE,
    pressure=PRESSURE,
)
def hydrogen_volume(
    charge: Quantity,
    efficiency: Quantity | float,
    temperature: Quantity = ROOM,
    pressure: Quantity = ATMOSPHERE.quantity,
) -> Quantity:
    """Hydrogen, at the most, from the charge that made no metal.

    Equation: V [L] = Q [A·h]·(1 − η [1])·R [J/(mol·K)]·T [K] / (2·F [C/mol]·p [kPa])
    Errors: negative charge; an efficiency below 0 or over 1; no temperature or pressure.
    Source: Faraday’s law and the ideal gas; OpenStax Chemistry 2e, sections 9.2 and 17.7.

    >>> round(hydrogen_volume(ureg.Quantity(7.867, "A*h"), 6.90 / 9.326).magnitude, 2)
    0.92
    """
    lost = charge * (1 - efficiency)
    return lost * MOLAR_GAS.quantity * temperature.to("K") / (2 * FARADAY.quantity * pressure)


@formula(
    ENERGY,
    voltage=VOLTAGE,
    charge=CHARGE,
    rectifier_efficiency=RATIO.called("η", "efficiency of the rectifier", Rule.FRACTION),
)
def energy_used(voltage: Quantity, charge: Quantity, rectifier_efficiency: Quantity | float = 1.0) -> Quantity:
    """Energy that a charge took at a mean cell voltage; from the wall, with the rectifier’s efficiency.

    Equation: E [kWh] = U [V]·Q [A·h] / η [1]
    Errors: a negative voltage or charge; an efficiency that is not more than 0 and at most 1.
    Source: definition of the volt.

    >>> round(energy_used(1.4 * ureg.V, ureg.Quantity(163.5, "A*h")).magnitude, 2)
    0.23
    """
    return voltage * charge / rectifier_efficiency
