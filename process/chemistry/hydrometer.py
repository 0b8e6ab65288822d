"""What a hydrometer says of a bath: degrees Baumé with their modulus, specific gravity, density."""

from pint import Quantity

from process.chemistry.constants import Constant
from process.chemistry.errors import ChemistryError
from process.chemistry.formula import formula
from process.chemistry.terms import CONCENTRATION, DENSITY, RATIO, Rule, nominal
from records.units import ureg

DEGREES = RATIO.called("B", "degrees Baumé", Rule.NOT_NEGATIVE)
MODULUS = RATIO.called("m", "modulus of the scale", Rule.POSITIVE)
GRAVITY = RATIO.called("s", "specific gravity", Rule.POSITIVE)
WATER_20 = Constant("ρ₀", "water at 20 °C", ureg.Quantity(0.998207, "g/cm**3"), "g/cm**3",
                    "Tanaka et al., Metrologia 38 (2001) 301")  # fmt: skip
RISE = Constant("b", "rise of density with what is dissolved", ureg.Quantity(0.63, ""), "",
                "fitted to four mixed baths after Laliberté and Cooper (2004); within 0.5 %")  # fmt: skip


@formula(GRAVITY, degrees=DEGREES, modulus=MODULUS)
def specific_gravity(degrees: Quantity | float, modulus: Quantity | float) -> Quantity:
    """Specific gravity of a liquid heavier than water, from degrees Baumé of a named modulus.

    Equation: s [1] = m [1] / (m [1] − B [1])
    Errors: degrees as high as the modulus; a negative reading; a modulus of zero or less.
    Source: modulus 145 at 60 °F, Roberts and Etherington, entry Baumé; 144.3 at 15 °C and 146, from memory.

    >>> round(specific_gravity(24, 145).magnitude, 4), round(specific_gravity(24, 144.3).magnitude, 4)
    (1.1983, 1.1995)
    """
    degrees, modulus = ureg.Quantity(degrees), ureg.Quantity(modulus)
    if not nominal(degrees.magnitude) < nominal(modulus.magnitude):
        raise ChemistryError("degrees", "cannot reach the modulus of the scale; read the hydrometer again")
    return modulus / (modulus - degrees)


@formula(DEGREES, gravity=GRAVITY, modulus=MODULUS)
def degrees_baume(gravity: Quantity | float, modulus: Quantity | float) -> Quantity:
    """Degrees Baumé of a liquid heavier than water.

    Equation: B [1] = m [1] − m [1]/s [1]
    Errors: a gravity or modulus of zero or less.
    Source: the definition of the scale turned round.

    >>> round(degrees_baume(1.15, 145).magnitude, 3)
    18.913
    """
    return ureg.Quantity(modulus) - ureg.Quantity(modulus) / ureg.Quantity(gravity)


@formula(GRAVITY, degrees=DEGREES)
def light_gravity(degrees: Quantity | float) -> Quantity:
    """Specific gravity of a liquid lighter than water; its scale runs the other way.

    Equation: s [1] = 140 / (130 + B [1])
    Errors: a negative reading.
    Source: Roberts and Etherington, entry Baumé.

    >>> round(light_gravity(26).magnitude, 4)
    0.8974
    """
    return 140 / (130 + ureg.Quantity(degrees))


@formula(DENSITY, gravity=GRAVITY, water=DENSITY.called("ρ₁", "water at the temperature of the scale"))
def density_of_gravity(gravity: Quantity | float, water: Quantity) -> Quantity:
    """Density of a liquid whose gravity is stated against water of the same temperature.

    Equation: ρ [g/cm³] = s [1]·ρ₁ [g/cm³]
    Errors: a gravity or density of zero or less.
    Source: definition of specific gravity.

    >>> round(density_of_gravity(1.1675, ureg.Quantity(0.99901, "g/cm**3")).magnitude, 4)
    1.1663
    """
    return ureg.Quantity(gravity) * water


@formula(
    DENSITY.called("ρ", "density expected"),
    WATER_20,
    RISE,
    salt=CONCENTRATION.called("c₁", "copper sulphate, CuSO₄·5H₂O"),
    acid=CONCENTRATION.called("c₂", "sulphuric acid"),
)
def expected_density(salt: Quantity, acid: Quantity) -> Quantity:
    """Density that a bath of this composition should have; it cannot tell salt from acid.

    Equation: ρ [g/cm³] = ρ₀ [g/cm³] + b [1]·(c₁ [g/L] + c₂ [g/L])
    Errors: a negative concentration.
    Source: straight line through model densities of four mixed baths at 20 °C, no measurement seen; within 0.5 %.

    >>> round(expected_density(ureg.Quantity(200, "g/L"), ureg.Quantity(50, "g/L")).magnitude, 3)
    1.156
    """
    return WATER_20.quantity + RISE.quantity * (salt + acid)
