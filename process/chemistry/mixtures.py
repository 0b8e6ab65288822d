"""What the density of a mixture can tell: volumes taken to add up, nothing porous."""

from collections.abc import Sequence

from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.formula import formula
from process.chemistry.terms import DENSITY, RATIO, Rule, above, nominal
from records.units import ureg

SHARES = RATIO.called("w", "share by mass", Rule.NOT_NEGATIVE).several("Σw", "shares by mass")
DENSITIES = DENSITY.several("ρ₁", "density of each part")
FOUND = DENSITY.called("ρ", "density found")


@formula(DENSITY.called("ρ", "density of the mixture"), shares=SHARES, densities=DENSITIES)
def mixture_density(shares: Sequence[Quantity | float], densities: Sequence[Quantity]) -> Quantity:
    """Density of a mixture from the shares of its parts by mass.

    Equation: ρ [g/cm³] = Σw [1] / Σ(w/ρ₁ [g/cm³])
    Errors: no part at all; shares that add up to nothing; a density of zero or less; lists of unequal length.
    Source: rule of mixtures, additive volumes; OpenStax College Physics 2e, section 11.2.

    >>> gram_per_cm3 = ureg.g / ureg.cm**3
    >>> round(mixture_density([0.925, 0.075], [10.49 * gram_per_cm3, 8.96 * gram_per_cm3]).magnitude, 2)
    10.36
    """
    weights = [ureg.Quantity(share) for share in shares]
    if len(weights) != len(densities):
        raise ChemistryError("densities", "give one for each share")
    room = sum((w / rho for w, rho in zip(weights[1:], densities[1:], strict=True)), weights[0] / densities[0])
    if not nominal(room.magnitude) > 0:
        raise ChemistryError("shares", "add up to nothing; give the share of at least one part")
    return sum(weights[1:], start=weights[0]) / room


@formula(
    RATIO.called("w", "share of the heavier part by mass"),
    density=FOUND,
    heavier=DENSITY.called("ρ₁", "density of the heavier part"),
    lighter=DENSITY.called("ρ₂", "density of the lighter part"),
)
def share_of_heavier(density: Quantity, heavier: Quantity, lighter: Quantity) -> Quantity:
    """Share of the heavier of two parts that would give this density; only if there are no others and no pores.

    Equation: w [1] = (1/ρ₂ [g/cm³] − 1/ρ [g/cm³]) / (1/ρ₂ [g/cm³] − 1/ρ₁ [g/cm³])
    Errors: a density of zero or less; a heavier part that is not the heavier.
    Source: rule of mixtures turned round; Caley, Ohio J. Sci. 49 (1949), on how far it may be trusted.

    >>> gram_per_cm3 = ureg.g / ureg.cm**3
    >>> round(share_of_heavier(15.0 * gram_per_cm3, 19.3 * gram_per_cm3, 10.49 * gram_per_cm3).magnitude, 4)
    0.6587
    """
    if not above(heavier, lighter):
        raise ChemistryError("heavier", "must be denser than the lighter part; exchange the two")
    return (1 / lighter - 1 / density) / (1 / lighter - 1 / heavier)


@formula(
    RATIO.called("v", "hollow share of the volume", Rule.ANY),
    density=FOUND,
    solid=DENSITY.called("ρ₁", "density of the solid"),
)
def hollow_share(density: Quantity, solid: Quantity) -> Quantity:
    """Share of a body’s volume that holds nothing but air, if the rest of it is this solid; negative: it is denser.

    Equation: v [1] = 1 − ρ [g/cm³] / ρ₁ [g/cm³]
    Errors: a density of zero or less.
    Source: definition of density, the air’s own mass left out.

    >>> gram_per_cm3 = ureg.g / ureg.cm**3
    >>> round(hollow_share(8.36 * gram_per_cm3, 8.52 * gram_per_cm3).magnitude, 4)
    0.0188
    """
    return 1 - density / solid
