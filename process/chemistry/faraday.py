"""Faraday’s law in each direction: charge, mass, current and time."""

from pint import Quantity

from process.chemistry.constants import FARADAY
from process.chemistry.formula import formula
from process.chemistry.metals import Ion
from process.chemistry.terms import CHARGE, CURRENT, EQUIVALENT, ION, MASS, PLANNED_EFFICIENCY, TIME, Rule


@formula(EQUIVALENT, "M", "z", FARADAY, ion=ION)
def electrochemical_equivalent(ion: Ion) -> Quantity:
    """Mass that one ampere-hour deposits if all of it makes metal.

    Equation: k [g/(A·h)] = M [g/mol] / (z [1]·F [C/mol])
    Errors: a metal that is not an ion of this kit.
    Source: Faraday’s law; OpenStax Chemistry 2e, section 17.7.

    >>> from process.chemistry.metals import ion
    >>> round(electrochemical_equivalent(ion("Cu2+")).magnitude, 5)
    1.18549
    """
    return ion.atomic_weight / (ion.valence_count * FARADAY.quantity)


@formula(CHARGE, current=CURRENT, time=TIME)
def charge_passed(current: Quantity, time: Quantity) -> Quantity:
    """Charge that a steady current carries.

    Equation: Q [A·h] = I [A]·t [h]
    Errors: negative current or time.
    Source: definition of the ampere; OpenStax Chemistry 2e, section 17.7.

    >>> from records.units import ureg
    >>> charge_passed(ureg.Quantity(2.5, "A"), ureg.Quantity(35, "min")).to("C").magnitude
    5250.0
    """
    return current * time


@formula(MASS, "k", ion=ION, charge=CHARGE, efficiency=PLANNED_EFFICIENCY)
def deposited_mass(ion: Ion, charge: Quantity, efficiency: Quantity | float = 1.0) -> Quantity:
    """Mass of metal that a charge deposits; at full efficiency the theoretical mass.

    Equation: m [g] = k [g/(A·h)]·Q [A·h]·η [1]
    Errors: negative charge; an efficiency that is not more than 0 and at most 1.
    Source: Faraday’s law; OpenStax Chemistry 2e, section 17.7.

    >>> from process.chemistry.metals import ion
    >>> from records.units import ureg
    >>> round(deposited_mass(ion("Cu2+"), ureg.Quantity(36.85, "A*h")).magnitude, 2)
    43.69
    """
    return ion.equivalent * charge * efficiency


@formula(CHARGE, "k", ion=ION, mass=MASS, efficiency=PLANNED_EFFICIENCY)
def charge_for_mass(ion: Ion, mass: Quantity, efficiency: Quantity | float = 1.0) -> Quantity:
    """Charge that a mass of metal needs.

    Equation: Q [A·h] = m [g] / (k [g/(A·h)]·η [1])
    Errors: negative mass; an efficiency that is not more than 0 and at most 1.
    Source: Faraday’s law, solved for the charge; OpenStax Chemistry 2e, section 17.7.

    >>> from process.chemistry.metals import ion
    >>> from records.units import ureg
    >>> round(charge_for_mass(ion("Cu2+"), ureg.Quantity(43.03, "g"), 0.985).magnitude, 2)
    36.85
    """
    return mass / (ion.equivalent * efficiency)


@formula(TIME, charge=CHARGE, current=CURRENT.called("I", "current", Rule.POSITIVE))
def deposition_time(charge: Quantity, current: Quantity) -> Quantity:
    """Time that a steady current needs for a charge.

    Equation: t [h] = Q [A·h] / I [A]
    Errors: negative charge; a current of zero or less.
    Source: definition of the ampere; OpenStax Chemistry 2e, section 17.7.

    >>> from records.units import ureg
    >>> round(deposition_time(ureg.Quantity(36.85, "A*h"), ureg.Quantity(1.206, "A")).magnitude, 2)
    30.56
    """
    return charge / current


@formula(CURRENT, charge=CHARGE, time=TIME.called("t", "time", Rule.POSITIVE))
def current_for_charge(charge: Quantity, time: Quantity) -> Quantity:
    """Steady current that carries a charge within a time.

    Equation: I [A] = Q [A·h] / t [h]
    Errors: negative charge; a time of zero or less.
    Source: definition of the ampere; OpenStax Chemistry 2e, section 17.7.

    >>> from records.units import ureg
    >>> current_for_charge(ureg.Quantity(10, "A*h"), ureg.Quantity(5, "h")).magnitude
    2.0
    """
    return charge / time
