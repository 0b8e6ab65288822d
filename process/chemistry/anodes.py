"""What the anodes must give and what they gave."""

from pint import Quantity

from process.chemistry.formula import formula
from process.chemistry.metals import Ion
from process.chemistry.terms import BATH_VOLUME, CHARGE, CONCENTRATION, ION, MASS, RATIO, Rule

ANODE_MASS_FACTOR = 3.0  # times the deposit; common practice, from memory


@formula(
    MASS.called("m₁", "anode metal needed"),
    mass=MASS.called("m", "mass to deposit"),
    factor=RATIO.called("f", "reserve, rule of thumb", Rule.POSITIVE),
)
def anode_need(mass: Quantity, factor: float = ANODE_MASS_FACTOR) -> Quantity:
    """Anode metal that should hang in the bath before the start.

    Equation: m₁ [g] = f [1]·m [g]
    Errors: negative mass; a factor of zero or less.
    Source: common practice, three times the deposit; from memory.

    >>> from records.units import ureg
    >>> anode_need(43.03 * ureg.g).magnitude
    129.09
    """
    return factor * mass


@formula(
    RATIO.called("x", "anode loss against Faraday’s law"),
    "k",
    ion=ION,
    mass_before=MASS.called("m₁", "anodes before"),
    mass_after=MASS.called("m₂", "anodes after"),
    charge=CHARGE.called("Q", "charge passed", Rule.POSITIVE),
)
def anode_loss(ion: Ion, mass_before: Quantity, mass_after: Quantity, charge: Quantity) -> Quantity:
    """What the anodes lost for each gram that the charge should dissolve; usually 0.98 to 1.03.

    Equation: x [1] = (m₁ [g] − m₂ [g]) / (k [g/(A·h)]·Q [A·h])
    Errors: negative mass; a charge of zero or less.
    Source: Faraday’s law at the anode; the usual band is common practice, from memory.

    >>> from process.chemistry.metals import ion
    >>> from records.units import ureg
    >>> g = ureg.g
    >>> round(anode_loss(ion("Cu2+"), 7999 * g, 7652 * g, ureg.Quantity(288.267, "A*h")).magnitude, 3)
    1.015
    """
    return (mass_before - mass_after) / (ion.equivalent * charge)


@formula(
    CONCENTRATION.called("Δc", "copper gained by the bath", Rule.ANY),
    "k",
    ion=ION,
    charge=CHARGE,
    anode=RATIO.called("η₁", "efficiency of the anodes", Rule.POSITIVE),
    cathode=RATIO.called("η₂", "efficiency of the cathodes", Rule.POSITIVE),
    volume=BATH_VOLUME,
)
def drift(ion: Ion, charge: Quantity, anode: Quantity | float, cathode: Quantity | float, volume: Quantity) -> Quantity:
    """How the metal in a bath drifts where anodes give more, or less, than the cathodes take.

    Equation: Δc [g/L] = k [g/(A·h)]·Q [A·h]·(η₁ [1] − η₂ [1]) / V [L]
    Errors: negative charge; an efficiency or a volume of zero or less.
    Source: Faraday’s law at both electrodes.

    >>> from process.chemistry.metals import ion
    >>> from records.units import ureg
    >>> round(drift(ion("Cu2+"), ureg.Quantity(240, "A*h"), 1.005, 0.995, 40 * ureg.L).magnitude, 4)
    0.0711
    """
    return ion.equivalent * charge * (anode - cathode) / volume
