"""What must stand behind a plan: anodes, bath, power unit, and the thinnest place that the plan promises."""

from pint import Quantity

from process.chemistry.formula import formula
from process.chemistry.metals import Ion
from process.chemistry.terms import (
    AREA,
    BATH_VOLUME,
    CURRENT,
    CURRENT_DENSITY,
    ION,
    LENGTH,
    PLANNED_EFFICIENCY,
    RATIO,
    THICKNESS,
    TIME,
    VOLTAGE,
    Rule,
    Term,
)

MEAN = THICKNESS.called("d", "mean thickness", Rule.POSITIVE)
FACTOR = RATIO.called("f", "distribution factor: thinnest over mean", Rule.FRACTION)


@formula(THICKNESS.called("d₁", "thinnest place"), thickness=MEAN, distribution_factor=FACTOR)
def minimum_anywhere(thickness: Quantity, distribution_factor: float | Quantity) -> Quantity:
    """Thickness of the thinnest place that a mean promises; the factor always names where it comes from.

    Equation: d₁ [mm] = d [mm]·f [1]
    Errors: a thickness of zero or less; a factor that is not more than 0 and at most 1.
    Source: definition of the distribution factor; a groove as deep as wide holds about 0.35 (common practice).

    >>> from records.units import ureg
    >>> minimum_anywhere(0.6 * ureg.mm, 0.5).magnitude
    0.3
    """
    return thickness * distribution_factor


@formula(
    MEAN,
    minimum=THICKNESS.called("d₁", "thinnest place wanted", Rule.POSITIVE),
    distribution_factor=FACTOR,
)
def mean_for_minimum(minimum: Quantity, distribution_factor: float | Quantity) -> Quantity:
    """Mean thickness to plan so that the thinnest place comes out as wanted.

    Equation: d [mm] = d₁ [mm] / f [1]
    Errors: a thickness of zero or less; a factor that is not more than 0 and at most 1.
    Source: definition of the distribution factor.

    >>> from records.units import ureg
    >>> mean_for_minimum(0.3 * ureg.mm, 0.5).magnitude
    0.6
    """
    return minimum / distribution_factor


@formula(
    CURRENT_DENSITY,
    "k",
    "ρ",
    ion=ION,
    thickness=MEAN,
    time=TIME.called("t", "time allowed", Rule.POSITIVE),
    efficiency=PLANNED_EFFICIENCY,
)
def density_for_time(ion: Ion, thickness: Quantity, time: Quantity, efficiency: float | Quantity = 1.0) -> Quantity:
    """Mean current density that a thickness takes in a given time.

    Equation: j [A/dm²] = ρ [g/cm³]·d [mm] / (k [g/(A·h)]·η [1]·t [h])
    Errors: a thickness or time of zero or less; an efficiency that is not more than 0 and at most 1.
    Source: Faraday’s law and the definition of density; OpenStax Chemistry 2e, section 17.7.

    >>> from process.chemistry.metals import ion
    >>> from records.units import ureg
    >>> round(density_for_time(ion("Cu2+"), 0.2 * ureg.mm, ureg.Quantity(2, "h")).magnitude, 2)
    7.52
    """
    return ion.density * thickness / (ion.equivalent * efficiency * time)


@formula(
    RATIO.called("x", "anode area over cathode area"),
    anode_area=AREA.called("A₁", "area of the anodes"),
    area=AREA.called("A", "area of the cathodes"),
)
def anode_ratio(anode_area: Quantity, area: Quantity) -> Quantity:
    """Anode area for each area of cathode; usual are 1 to 2, and hardly ever less.

    Equation: x [1] = A₁ [dm²] / A [dm²]
    Errors: an area of zero or less.
    Source: common practice, one to two times the cathode; Bouilhet in Dingler’s journal 182 (1866) has them equal.

    >>> from records.units import ureg
    >>> anode_ratio(ureg.Quantity(12, "dm**2"), ureg.Quantity(8, "dm**2")).magnitude
    1.5
    """
    return anode_area / area


@formula(
    Term("x", "current for each litre", "A/L"),
    current=CURRENT,
    volume=BATH_VOLUME,
)
def bath_load(current: Quantity, volume: Quantity) -> Quantity:
    """Current for each litre of bath; about 1 A/L warms and exhausts a bath that nobody cools.

    Equation: x [A/L] = I [A] / V [L]
    Errors: a negative current; a volume of zero or less.
    Source: definition; the limit of about 1 A/L is common practice, from memory.

    >>> from records.units import ureg
    >>> round(bath_load(ureg.Quantity(10.3, "A"), 60 * ureg.L).magnitude, 3)
    0.172
    """
    return current / volume


@formula(
    RATIO.called("x", "smallest step over the current"),
    resolution=CURRENT.called("I₁", "smallest step of the power unit", Rule.POSITIVE),
    current=CURRENT.called("I", "smallest current of the ramp", Rule.POSITIVE),
)
def resolution_share(resolution: Quantity, current: Quantity) -> Quantity:
    """How coarse a power unit is for a current; over 5 % it cannot hold it.

    Equation: x [1] = I₁ [A] / I [A]
    Errors: a step or a current of zero or less.
    Source: definition; the limit of 5 % is common practice, from memory.

    >>> from records.units import ureg
    >>> resolution_share(ureg.Quantity(0.1, "A"), ureg.Quantity(0.08, "A")).magnitude
    1.25
    """
    return resolution / current


@formula(
    VOLTAGE,
    current_density=CURRENT_DENSITY,
    gap=LENGTH.called("l", "distance from anode to cathode"),
    conductivity=Term("κ", "conductivity of the bath", "S/cm", Rule.POSITIVE),
)
def ohmic_drop(current_density: Quantity, gap: Quantity, conductivity: Quantity) -> Quantity:
    """Voltage that the bath itself takes between anode and cathode; contacts and reactions come on top.

    Equation: U [V] = j [A/dm²]·l [mm] / κ [S/cm]
    Errors: a negative current density; a distance or conductivity of zero or less.
    Source: Ohm’s law in a uniform field.

    >>> from records.units import ureg
    >>> Q = ureg.Quantity
    >>> round(ohmic_drop(Q(2, "A/dm**2"), Q(100, "mm"), Q(0.2, "S/cm")).magnitude, 6)
    1.0
    """
    return current_density * gap / conductivity


@formula(
    VOLTAGE.called("U", "cell voltage"),
    drop=VOLTAGE.called("U₁", "ohmic drop of the bath"),
    allowance=VOLTAGE.called("U₂", "reactions and contacts"),
)
def cell_voltage(drop: Quantity, allowance: Quantity) -> Quantity:
    """Voltage that the power unit must give: what the bath takes, and an allowance for reactions and contacts.

    Equation: U [V] = U₁ [V] + U₂ [V]
    Errors: a negative voltage.
    Source: Kirchhoff’s voltage law; 0.1 to 0.3 V for soluble copper anodes is common practice, from memory.

    >>> from records.units import ureg
    >>> round(cell_voltage(0.9 * ureg.V, 0.2 * ureg.V).magnitude, 6)
    1.1
    """
    return drop + allowance
