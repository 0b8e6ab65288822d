"""What to add to a bath, or to take from it, to come back to the target."""

from bisect import bisect_left

from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.formula import formula
from process.chemistry.terms import BATH_VOLUME, CONCENTRATION, DENSITY, MASS, RATIO, SMALL_VOLUME, Rule, above, nominal
from records.units import ureg

TARGET = CONCENTRATION.called("c₂", "target")
FOUND = CONCENTRATION.called("c₁", "found", Rule.POSITIVE)
ACID_DENSITY = ureg.Quantity(1.835, "g/cm**3")  # sulphuric acid of 96 % at 20 °C; handbook value, from memory
ACID_FRACTION = 0.96


@formula(MASS, target=TARGET, found=CONCENTRATION.called("c₁", "found"), volume=BATH_VOLUME)
def mass_to_add(target: Quantity, found: Quantity, volume: Quantity) -> Quantity:
    """Mass of salt, or of pure acid, that raises a bath to its target.

    Equation: m [g] = (c₂ [g/L] − c₁ [g/L])·V [L]
    Errors: found already above the target; a volume of zero or less.
    Source: mass balance, the small change of volume neglected; common practice.

    >>> gram_per_litre = ureg.g / ureg.L
    >>> round(mass_to_add(210 * gram_per_litre, 203.4 * gram_per_litre, 60 * ureg.L).magnitude)
    396
    """
    if above(found, target):
        raise ChemistryError("found", "is above the target already; dilute the bath instead of adding")
    return (target - found) * volume


@formula(
    SMALL_VOLUME.called("V", "volume of concentrated acid"),
    mass=MASS.called("m", "mass of pure acid"),
    density=DENSITY.called("ρ", "density of the acid as bought"),
    fraction=RATIO.called("w", "its strength by mass", Rule.FRACTION),
)
def acid_volume(
    mass: Quantity, density: Quantity = ACID_DENSITY, fraction: Quantity | float = ACID_FRACTION
) -> Quantity:
    """Volume of concentrated acid that holds a mass of pure acid; acid goes into the bath, slowly.

    Equation: V [mL] = m [g] / (ρ [g/cm³]·w [1])
    Errors: a negative mass; a density of zero or less; a strength that is not more than 0 and at most 1.
    Source: definition of density; 96 % acid of 1.835 g/cm³ at 20 °C is a handbook value, from memory.

    >>> round(acid_volume(168 * ureg.g).magnitude, 2)
    95.37
    """
    return mass / (density * fraction)


@formula(BATH_VOLUME.called("V₁", "volume to replace by water"), found=FOUND, target=TARGET, volume=BATH_VOLUME)
def volume_to_replace(found: Quantity, target: Quantity, volume: Quantity) -> Quantity:
    """Volume of bath to take out and replace by water, to come down to the target.

    Equation: V₁ [L] = V [L]·(c₁ [g/L] − c₂ [g/L]) / c₁ [g/L]
    Errors: found already below the target; a concentration or volume of zero or less.
    Source: mass balance; common practice.

    >>> gram_per_litre = ureg.g / ureg.L
    >>> round(volume_to_replace(235 * gram_per_litre, 210 * gram_per_litre, 60 * ureg.L).magnitude, 1)
    6.4
    """
    if above(target, found):
        raise ChemistryError("found", "is below the target already; add to the bath instead of diluting")
    return volume * (found - target) / found


@formula(
    CONCENTRATION.called("c₂", "concentration at the mark"),
    found=CONCENTRATION.called("c₁", "found"),
    volume_now=BATH_VOLUME.called("V₁", "volume when sampled"),
    volume_mark=BATH_VOLUME.called("V", "volume at the mark"),
)
def at_the_mark(found: Quantity, volume_now: Quantity, volume_mark: Quantity) -> Quantity:
    """Concentration that a bath will have once filled up to its mark with water.

    Equation: c₂ [g/L] = c₁ [g/L]·V₁ [L] / V [L]
    Errors: a negative concentration; a volume of zero or less.
    Source: mass balance; common practice.

    >>> round(at_the_mark(215 * ureg.g / ureg.L, 58.5 * ureg.L, 60 * ureg.L).magnitude, 1)
    209.6
    """
    return found * volume_now / volume_mark


@formula(
    MASS.called("m", "mass of pure acid"),
    volume=SMALL_VOLUME.called("V", "volume of concentrated acid"),
    density=DENSITY.called("ρ", "density of the acid as bought"),
    fraction=RATIO.called("w", "its strength by mass", Rule.FRACTION),
)
def acid_in(volume: Quantity, density: Quantity = ACID_DENSITY, fraction: Quantity | float = ACID_FRACTION) -> Quantity:
    """Mass of pure acid in a volume of concentrated acid.

    Equation: m [g] = V [mL]·ρ [g/cm³]·w [1]
    Errors: a negative volume; a density of zero or less; a strength that is not more than 0 and at most 1.
    Source: definition of density; 96 % acid of 1.835 g/cm³ at 20 °C is a handbook value, from memory.

    >>> round(acid_in(95.37 * ureg.mL).magnitude, 1)
    168.0
    """
    return volume * density * fraction


# Sulphuric acid at 20 °C: mass per cent and g/cm³; International Critical Tables as handbooks print them, from memory.
STRENGTHS = (0, 10, 20, 30, 40, 50, 60, 70, 80, 90, ACID_FRACTION * 100, 98, 100)
DENSITIES = (0.9982, 1.0661, 1.1394, 1.2185, 1.3028, 1.3951, 1.4983, 1.6105, 1.7272, 1.8144, ACID_DENSITY.m, 1.8361,
             1.8305)  # fmt: skip


@formula(
    DENSITY.called("ρ", "density of the acid"),
    fraction=RATIO.called("w", "strength by mass", Rule.FRACTION),
)
def acid_density(fraction: Quantity | float) -> Quantity:
    """Density of sulphuric acid of a strength, at 20 °C.

    Equation: ρ [g/cm³] = ρ₀ + (ρ₁ − ρ₀)·(w − w₀)/(w₁ − w₀) between the two rows of the table that w [1] lies between
    Errors: a strength that is not more than 0 and at most 1.
    Source: International Critical Tables, from memory; agrees with Myhre et al., J. Chem. Eng. Data 43 (1998) 617.

    >>> round(acid_density(0.5).magnitude, 4), round(acid_density(ACID_FRACTION).magnitude, 3)
    (1.3951, 1.835)
    """
    percent = ureg.Quantity(fraction).m_as("pct")
    at = min(max(bisect_left(STRENGTHS, float(nominal(percent))), 1), len(STRENGTHS) - 1)
    low, high = DENSITIES[at - 1], DENSITIES[at]
    share = (percent - STRENGTHS[at - 1]) / (STRENGTHS[at] - STRENGTHS[at - 1])
    return ureg.Quantity(low + (high - low) * share, "g/cm**3")


@formula(
    CONCENTRATION.called("c", "strength as bought"),
    density=DENSITY.called("ρ", "density as bought"),
    fraction=RATIO.called("w", "strength by mass", Rule.FRACTION),
)
def strength_as_bought(density: Quantity, fraction: Quantity | float) -> Quantity:
    """Grams of pure reagent in a litre of it as bought.

    Equation: c [g/L] = ρ [g/cm³]·w [1]
    Errors: a density of zero or less; a strength that is not more than 0 and at most 1.
    Source: definition of density; OpenStax Chemistry 2e, appendix F.

    >>> round(strength_as_bought(ureg.Quantity(1.84, "g/cm**3"), 0.96).magnitude)
    1766
    """
    return density * fraction
