"""What has grown: thickness, rate, efficiency, edge build-up and the depth of an interruption."""

from pint import Quantity

from process.chemistry.formula import formula
from process.chemistry.metals import Ion
from process.chemistry.terms import (
    AREA,
    CHARGE,
    CURRENT_DENSITY,
    EFFICIENCY,
    ION,
    MASS,
    PLANNED_EFFICIENCY,
    RATE,
    RATIO,
    THICKNESS,
    TIME,
    Rule,
)

DEPOSITED = MASS.called("m", "mass deposited, all tares taken off")
PASSED = CHARGE.called("Q", "charge passed", Rule.POSITIVE)
# Rule of thumb for the thinnest place of a relief, as a share of the mean (from memory, not measured).
MINIMUM_SHARES = (0.3, 0.6)


@formula(THICKNESS.called("d", "mean thickness"), "ρ", ion=ION, mass=DEPOSITED, area=AREA)
def mean_thickness(ion: Ion, mass: Quantity, area: Quantity) -> Quantity:
    """Mean thickness of a deposit over its whole cathode area; it says nothing of the thinnest place.

    Equation: d [mm] = m [g] / (ρ [g/cm³]·A [dm²])
    Errors: negative mass; an area of zero or less.
    Source: definition of density; OpenStax Chemistry 2e, section 17.7.

    >>> from process.chemistry.metals import ion
    >>> from records.units import ureg
    >>> round(mean_thickness(ion("Cu2+"), ureg.Quantity(22.05, "g"), ureg.Quantity(40.2, "cm**2")).m, 4)
    0.6149
    """
    return mass / (ion.density * area)


@formula(
    THICKNESS.called("d", "mean face thickness"),
    "ρ",
    ion=ION,
    trimmed_mass=MASS.called("m", "mass after trimming"),
    face_area=AREA.called("A", "area of the face"),
)
def face_thickness(ion: Ion, trimmed_mass: Quantity, face_area: Quantity) -> Quantity:
    """Mean thickness of the face after trimming.

    Equation: d [mm] = m [g] / (ρ [g/cm³]·A [dm²])
    Errors: negative mass; an area of zero or less.
    Source: definition of density; OpenStax Chemistry 2e, section 17.7.

    >>> from process.chemistry.metals import ion
    >>> from records.units import ureg
    >>> round(face_thickness(ion("Cu2+"), ureg.Quantity(15.10, "g"), ureg.Quantity(28.9, "cm**2")).m, 4)
    0.5858
    """
    return trimmed_mass / (ion.density * face_area)


@formula(
    THICKNESS.called("d", "grown thickness"),
    "k",
    "ρ",
    ion=ION,
    charge=CHARGE,
    area=AREA,
    efficiency=PLANNED_EFFICIENCY,
)
def grown_thickness(ion: Ion, charge: Quantity, area: Quantity, efficiency: Quantity | float = 1.0) -> Quantity:
    """Mean thickness that a charge has grown; the charge may be an array, for a chart.

    Equation: d [mm] = k [g/(A·h)]·Q [A·h]·η [1] / (ρ [g/cm³]·A [dm²])
    Errors: negative charge; an area of zero or less; an efficiency that is not more than 0 and at most 1.
    Source: Faraday’s law and the definition of density; OpenStax Chemistry 2e, section 17.7.

    >>> from process.chemistry.metals import ion
    >>> from records.units import ureg
    >>> round(grown_thickness(ion("Cu2+"), ureg.Quantity(7.524, "A*h"), ureg.Quantity(1, "dm**2")).m, 4)
    0.1
    """
    return ion.equivalent * charge * efficiency / (ion.density * area)


@formula(RATE, "k", "ρ", ion=ION, current_density=CURRENT_DENSITY, efficiency=PLANNED_EFFICIENCY)
def growth_rate(ion: Ion, current_density: Quantity, efficiency: Quantity | float = 1.0) -> Quantity:
    """Rate at which a deposit grows at a current density.

    Equation: r [µm/h] = k [g/(A·h)]·j [A/dm²]·η [1] / ρ [g/cm³]
    Errors: negative current density; an efficiency that is not more than 0 and at most 1.
    Source: Faraday’s law and the definition of density; OpenStax Chemistry 2e, section 17.7.

    >>> from process.chemistry.metals import ion
    >>> from records.units import ureg
    >>> round(growth_rate(ion("Cu2+"), ureg.Quantity(1, "A/dm**2")).magnitude, 2)
    13.29
    """
    return ion.equivalent * current_density * efficiency / ion.density


@formula(
    RATE.called("r", "mean rate while energised"),
    thickness=THICKNESS,
    energised_time=TIME.called("t", "energised time", Rule.POSITIVE),
)
def energised_rate(thickness: Quantity, energised_time: Quantity) -> Quantity:
    """Mean rate over the hours in which current flowed.

    Equation: r [µm/h] = d [mm] / t [h]
    Errors: negative thickness; a time of zero or less.
    Source: definition of a mean rate.

    >>> from records.units import ureg
    >>> round(energised_rate(ureg.Quantity(0.615, "mm"), ureg.Quantity(33, "h")).magnitude, 1)
    18.6
    """
    return thickness / energised_time


@formula(EFFICIENCY, "k", ion=ION, mass=DEPOSITED, charge=PASSED)
def efficiency(ion: Ion, mass: Quantity, charge: Quantity) -> Quantity:
    """Cathode efficiency that the balance found; over 1 is a result to be judged, not an error.

    Equation: η [1] = m [g] / (k [g/(A·h)]·Q [A·h])
    Errors: negative mass; a charge of zero or less.
    Source: Faraday’s law, solved for the efficiency; OpenStax Chemistry 2e, section 17.7.

    >>> from process.chemistry.metals import ion
    >>> from records.units import ureg
    >>> round(efficiency(ion("Cu2+"), ureg.Quantity(43.18, "g"), ureg.Quantity(36.85, "A*h")).magnitude, 3)
    0.988
    """
    return mass / (ion.equivalent * charge)


@formula(
    RATIO.called("x", "edge factor"),
    flange_mass=MASS.called("m₁", "mass trimmed off"),
    flange_area=AREA.called("A₁", "area trimmed off"),
    face_mass=MASS.called("m₂", "mass after trimming", Rule.POSITIVE),
    face_area=AREA.called("A₂", "area of the face"),
)
def edge_factor(flange_mass: Quantity, flange_area: Quantity, face_mass: Quantity, face_area: Quantity) -> Quantity:
    """How much thicker the rim has grown than the face.

    Equation: x [1] = (m₁ [g] / A₁ [dm²]) / (m₂ [g] / A₂ [dm²])
    Errors: negative mass; a face without mass; an area of zero or less.
    Source: ratio of two masses per area; common practice.

    >>> from records.units import ureg
    >>> g, cm2 = ureg.g, ureg.cm**2
    >>> round(edge_factor(6.95 * g, 11.3 * cm2, 15.10 * g, 28.9 * cm2).magnitude, 3)
    1.177
    """
    return (flange_mass / flange_area) / (face_mass / face_area)


@formula(
    THICKNESS.called("d₁", "depth of the interface"),
    thickness=THICKNESS.called("d", "mean thickness"),
    charge_before=CHARGE.called("Q₁", "charge before the interruption"),
    charge_total=CHARGE.called("Q", "charge in all", Rule.POSITIVE),
)
def interface_depth(thickness: Quantity, charge_before: Quantity, charge_total: Quantity) -> Quantity:
    """Depth, from the contact face, at which an interruption lies in the wall.

    Equation: d₁ [mm] = d [mm]·Q₁ [A·h] / Q [A·h]
    Errors: negative thickness or charge; a whole charge of zero.
    Source: growth is proportional to charge by Faraday’s law at constant efficiency.

    >>> from records.units import ureg
    >>> depth = interface_depth(0.422 * ureg.mm, ureg.Quantity(3.92, "A*h"), ureg.Quantity(8.94, "A*h"))
    >>> round(depth.magnitude, 4)
    0.185
    """
    return thickness * charge_before / charge_total


@formula(
    THICKNESS.called("d₁", "minimum thickness, estimated"),
    thickness=THICKNESS.called("d", "mean thickness"),
    share=RATIO.called("s", "share of the mean, rule of thumb", Rule.FRACTION),
)
def estimated_minimum(thickness: Quantity, share: float) -> Quantity:
    """Thinnest place where none was measured: an estimate, to be called one wherever it is shown.

    Equation: d₁ [mm] = d [mm]·s [1]
    Errors: negative thickness; a share that is not more than 0 and at most 1.
    Source: common practice, 0.3 to 0.6 of the mean (MINIMUM_SHARES); from memory.

    >>> from records.units import ureg
    >>> [round(estimated_minimum(0.6 * ureg.mm, share).magnitude, 2) for share in MINIMUM_SHARES]
    [0.18, 0.36]
    """
    return thickness * share
