"""A core before and after the bath: what it takes up, what it loses, and what stays inside."""

from datetime import datetime

from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.faraday import deposited_mass
from process.chemistry.formula import formula
from process.chemistry.judgement import ROUNDING, SETTLED_SHARE, SETTLED_SPAN, Weighing
from process.chemistry.metals import Ion
from process.chemistry.terms import CHARGE, EFFICIENCY, ION, MASS, PLANNED_EFFICIENCY, RATIO, Rule, nominal

DRY = MASS.called("m₀", "dry mass", Rule.POSITIVE)
READY = MASS.called("m₀", "mass ready for the bath", Rule.POSITIVE)


@formula(RATIO.called("u", "mass taken up, share of the dry mass"), dry=DRY, sealed=MASS.called("m", "mass after"))
def uptake(dry: Quantity, sealed: Quantity) -> Quantity:
    """Share of its dry mass that a core takes up: wax in the waterproofing, water in the leak test.

    Equation: u [1] = (m [g] − m₀ [g]) / m₀ [g]
    Errors: a dry mass of zero or less; a negative mass after.
    Source: definition of a share; 10 to 25 % of wax and under 0.2 % of water are usual (common practice, from memory).

    >>> from records.units import ureg
    >>> round(uptake(ureg.Quantity(1138.0, "g"), ureg.Quantity(1290.8, "g")).m_as("pct"), 1)
    13.4
    """
    return (sealed - dry) / dry


@formula(
    MASS.called("m", "mass ready for the bath"),
    sealed=MASS.called("m₁", "mass after waterproofing", Rule.POSITIVE),
    wires=MASS.called("w", "mass of the wires"),
)
def ready_mass(sealed: Quantity, wires: Quantity) -> Quantity:
    """Mass of a core as it goes into the bath, by its parts.

    Equation: m [g] = m₁ [g] + w [g]
    Errors: a mass after waterproofing of zero or less; a negative mass of wires.
    Source: a sum of weighings.

    >>> from records.units import ureg
    >>> round(ready_mass(ureg.Quantity(1290.8, "g"), ureg.Quantity(21.6, "g")).m, 1)
    1312.4
    """
    return sealed + wires


@formula(MASS.called("g", "gain", Rule.ANY), mass=MASS.called("m", "mass weighed", Rule.POSITIVE), ready=READY)
def gain_over(mass: Quantity, ready: Quantity) -> Quantity:
    """What a skinned core weighs more than it did before the bath: metal, and whatever it drank.

    Equation: g [g] = m [g] − m₀ [g]
    Errors: a mass of zero or less.
    Source: difference of two weighings.

    >>> from records.units import ureg
    >>> round(gain_over(ureg.Quantity(1507.2, "g"), ureg.Quantity(1312.4, "g")).m, 1)
    194.8
    """
    return mass - ready


@formula(
    EFFICIENCY.called("η", "apparent efficiency", Rule.ANY),
    "k",
    ion=ION,
    gain=MASS.called("g", "gain", Rule.ANY),
    charge=CHARGE.called("Q", "charge passed", Rule.POSITIVE),
)
def apparent_efficiency(ion: Ion, gain: Quantity, charge: Quantity) -> Quantity:
    """What the efficiency would be if all of the gain were metal; over 100 % it is not.

    Equation: η [1] = g [g] / (k [g/(A·h)]·Q [A·h])
    Errors: a charge of zero or less.
    Source: Faraday’s law; OpenStax Chemistry 2e, section 17.7.

    >>> from process.chemistry.metals import ion
    >>> from records.units import ureg
    >>> round(apparent_efficiency(ion("Cu2+"), ureg.Quantity(199.6, "g"), ureg.Quantity(163.5, "A*h")).m_as("pct"), 1)
    103.0
    """
    return gain / (ion.equivalent * charge)


@formula(
    MASS.called("r", "residue", Rule.ANY),
    "k",
    ion=ION,
    gain=MASS.called("g", "gain", Rule.ANY),
    charge=CHARGE.called("Q", "charge passed", Rule.POSITIVE),
    efficiency=PLANNED_EFFICIENCY,
)
def residue(ion: Ion, gain: Quantity, charge: Quantity, efficiency: Quantity | float) -> Quantity:
    """What of the gain cannot be metal if the deposit is taken at an efficiency: solution and salt left inside.

    Equation: r [g] = g [g] − k [g/(A·h)]·Q [A·h]·η [1]
    Errors: a charge of zero or less; an efficiency that is not more than 0 and at most 1.
    Source: Faraday’s law; OpenStax Chemistry 2e, section 17.7.

    >>> from process.chemistry.metals import ion
    >>> from records.units import ureg
    >>> round(residue(ion("Cu2+"), ureg.Quantity(194.8, "g"), ureg.Quantity(163.5, "A*h"), 0.99).m, 1)
    2.9
    """
    return gain - deposited_mass(ion, charge, efficiency)


@formula(MASS.called("a", "greatest difference", Rule.NOT_NEGATIVE), mass=MASS.called("m", "last mass", Rule.POSITIVE))
def agreement_within(mass: Quantity) -> Quantity:
    """How far two weighings may lie apart and still count as constant mass.

    Equation: a [g] = 0.0002·m [g]
    Errors: a mass of zero or less.
    Source: rule of this register, 0.02 % of the last mass; from memory, a museum may keep its own.

    >>> from records.units import ureg
    >>> round(agreement_within(ureg.Quantity(1507.2, "g")).m, 2)
    0.3
    """
    return SETTLED_SHARE * mass


def settled_since(weighings: list[Weighing]) -> Weighing | None:
    """The earlier weighing that agrees with the last over at least seven days, the nearest such; else nothing.

    Equation: |m(last) − m(earlier)| [g] ≤ 0.0002·m(last) [g], with t(last) − t(earlier) ≥ 7 days
    Errors: instants without time zone.
    Source: rule of this register (judgement.SETTLED_SPAN, SETTLED_SHARE).

    >>> settled_since([]) is None
    True
    """
    if any(each.instant.tzinfo is None for each in weighings):
        raise ChemistryError("weighings", "need instants with their offset from UTC")
    ordered = sorted(weighings, key=lambda each: each.instant)
    for each in reversed(ordered):
        last = ordered[-1]
        if last.instant - each.instant >= SETTLED_SPAN and _agree(each, last):
            return each
    return None


def _agree(one: Weighing, other: Weighing) -> bool:
    return abs(float(nominal(((one.mass - other.mass) / other.mass).m_as("")))) <= SETTLED_SHARE * ROUNDING


def settles_at_the_earliest(weighings: list[Weighing]) -> datetime | None:
    """The first instant at which one more weighing could show constant mass; nothing without a weighing.

    Equation: t = t(earlier) + 7 days, for the earliest weighing that agrees with the last as it stands
    Errors: none.
    Source: rule of this register (judgement.SETTLED_SPAN).

    >>> settles_at_the_earliest([]) is None
    True
    """
    ordered = sorted(weighings, key=lambda each: each.instant)
    if not ordered:
        return None
    alike = next(each for each in ordered if _agree(each, ordered[-1]))
    return max(alike.instant + SETTLED_SPAN, ordered[-1].instant)
