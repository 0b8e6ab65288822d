"""Mass, volume and density of a made-up copy."""

from collections.abc import Sequence

from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.formula import formula
from process.chemistry.terms import DENSITY, MASS, RATIO, VOLUME, Rule, above, nominal
from records.units import ureg

AIR_DENSITY = ureg.Quantity(0.0012, "g/cm**3")  # moist air near 20 °C and 1013 hPa, simplified CIPM formula


@formula(VOLUME, mass=MASS, density=DENSITY)
def volume_of(mass: Quantity, density: Quantity) -> Quantity:
    """Volume that a mass fills.

    Equation: V [cm³] = m [g] / ρ [g/cm³]
    Errors: a negative mass; a density of zero or less.
    Source: definition of density.

    >>> round(volume_of(15.82 * ureg.g, ureg.Quantity(10.31, "g/cm**3")).magnitude, 3)
    1.534
    """
    return mass / density


@formula(MASS, volume=VOLUME, density=DENSITY)
def mass_of(volume: Quantity, density: Quantity) -> Quantity:
    """Mass of a volume, as of a fill.

    Equation: m [g] = V [cm³]·ρ [g/cm³]
    Errors: a negative volume; a density of zero or less.
    Source: definition of density.

    >>> round(mass_of(0.898 * ureg.cm**3, ureg.Quantity(3.2, "g/cm**3")).magnitude, 2)
    2.87
    """
    return volume * density


@formula(MASS.called("m", "mass of the copy"), parts=MASS.several("Σm", "masses of shells, fill and skin"))
def copy_mass(parts: Sequence[Quantity]) -> Quantity:
    """Mass that a copy should have from its parts.

    Equation: m [g] = Σm [g]
    Errors: no part at all; a negative mass.
    Source: the parts of a whole.

    >>> round(copy_mass([5.65 * ureg.g, 2.873 * ureg.g, 0.19 * ureg.g]).magnitude, 2)
    8.71
    """
    return sum(parts[1:], start=parts[0])


def fill_masses(room: Quantity, shells: Quantity, densities: Sequence[Quantity]) -> tuple[Quantity, ...]:
    """Mass that a copy would have with each of several fillings, before one is chosen.

    Equation: m [g] = m₁ [g] + V [cm³]·ρ [g/cm³], once for each filling
    Errors: those of `mass_of` and `copy_mass`.
    Source: the parts of a whole.

    >>> each = fill_masses(4.7693 * ureg.cm**3, 29.62 * ureg.g, [ureg.Quantity(7.30, "g/cm**3")])
    >>> round(each[0].magnitude, 2)
    64.44
    """
    return tuple(copy_mass([shells, mass_of(room, density)]) for density in densities)


@formula(
    RATIO.called("x", "mass against the model"),
    copy=MASS.called("m", "mass of the copy", Rule.POSITIVE),
    model=MASS.called("m₀", "mass of the model", Rule.POSITIVE),
)
def mass_ratio(copy: Quantity, model: Quantity) -> Quantity:
    """Mass of a copy against its model: the oldest test of which is which.

    Equation: x [1] = m [g] / m₀ [g]
    Errors: a mass of zero or less.
    Source: common practice in cataloguing coins and medals.

    >>> round(mass_ratio(64.43 * ureg.g, 71.36 * ureg.g).m_as("pct"), 1)
    90.3
    """
    return copy / model


@formula(
    DENSITY.called("ρ", "mean density"),
    masses=MASS.several("Σm", "masses"),
    volumes=VOLUME.several("ΣV", "volumes"),
)
def mean_density(masses: Sequence[Quantity], volumes: Sequence[Quantity]) -> Quantity:
    """Mean density of a body of several materials, volumes taken to add up.

    Equation: ρ [g/cm³] = Σm [g] / ΣV [cm³]
    Errors: no part at all; a negative mass or volume; volumes that add up to nothing.
    Source: rule of mixtures, additive volumes; OpenStax College Physics 2e, section 11.2.

    >>> cm3 = ureg.cm**3
    >>> round(mean_density([18 * ureg.g, 6 * ureg.g], [0.9317 * cm3, 0.5899 * cm3]).magnitude, 2)
    15.77
    """
    total = sum(volumes[1:], start=volumes[0])
    if not nominal(total.magnitude) > 0:
        raise ChemistryError("volumes", "add up to nothing; give the volume of at least one part")
    return sum(masses[1:], start=masses[0]) / total


@formula(
    DENSITY.called("ρ", "density"),
    in_air=MASS.called("m₁", "balance in air", Rule.POSITIVE),
    in_water=MASS.called("m₂", "balance in water"),
    water=DENSITY.called("ρ₁", "density of the water"),
    air=DENSITY.called("ρ₂", "density of the air", Rule.NOT_NEGATIVE),
)
def hydrostatic_density(in_air: Quantity, in_water: Quantity, water: Quantity, air: Quantity = AIR_DENSITY) -> Quantity:
    """Density by weighing in air and in water; never for plaster, cores, open seams or corroded pieces.

    Equation: ρ [g/cm³] = m₁ [g]·(ρ₁ [g/cm³] − ρ₂ [g/cm³]) / (m₁ [g] − m₂ [g]) + ρ₂ [g/cm³]
    Errors: a mass in water that is not below the mass in air; a density of zero or less.
    Source: Archimedes with air buoyancy, as in balance manuals; OpenStax College Physics 2e, section 11.7.

    >>> water = ureg.Quantity(0.998207, "g/cm**3")
    >>> round(hydrostatic_density(8.630 * ureg.g, 7.800 * ureg.g, water).magnitude, 3)
    10.368
    """
    if not above(in_air, in_water):
        raise ChemistryError("in water", "must read less than in air; look for bubbles and weigh again")
    return in_air * (water - air) / (in_air - in_water) + air
