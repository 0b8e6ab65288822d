"""One rail, several cathodes: what each piece had of the charge."""

from collections.abc import Sequence

from pint import Quantity

from process.chemistry.formula import formula
from process.chemistry.terms import AREA, CHARGE, MASS, Rule

UNEVEN_LIMIT = 0.10  # a piece's mass per area this far from the rail's mean is looked into
PIECE = CHARGE.called("Q₁", "charge of the piece")
GAIN = MASS.called("m", "mass gained by the piece", Rule.POSITIVE)


@formula(PIECE, charge=CHARGE, area=AREA, areas=AREA.several("ΣA", "areas of all pieces on the rail"))
def share_by_area(charge: Quantity, area: Quantity, areas: Sequence[Quantity]) -> Quantity:
    """Charge that a piece takes by its share of the area: the planning share, used while a run goes on.

    Equation: Q₁ [A·h] = Q [A·h]·A [dm²] / ΣA [dm²]
    Errors: negative charge; an area of zero or less.
    Source: equal current density on one rail; common practice.

    >>> from records.units import ureg
    >>> dm2 = ureg.dm**2
    >>> share_by_area(ureg.Quantity(10, "A*h"), 1 * dm2, [1 * dm2, 3 * dm2]).magnitude
    2.5
    """
    return charge * area / sum(areas[1:], start=areas[0])


@formula(PIECE, charge=CHARGE, mass=GAIN, masses=GAIN.several("Σm", "masses gained by all pieces"))
def share_by_mass(charge: Quantity, mass: Quantity, masses: Sequence[Quantity]) -> Quantity:
    """Charge that a piece took by its share of the mass gained: the evidence share, after weighing.

    Equation: Q₁ [A·h] = Q [A·h]·m [g] / Σm [g]
    Errors: negative charge; a mass of zero or less.
    Source: Faraday’s law with one efficiency for the rail.

    >>> from records.units import ureg
    >>> g = ureg.g
    >>> round(share_by_mass(ureg.Quantity(36.85, "A*h"), 22.05 * g, [22.05 * g, 21.13 * g]).m, 2)
    18.82
    """
    return charge * mass / sum(masses[1:], start=masses[0])
