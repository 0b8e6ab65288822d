"""How evenly a bath covers: throwing power from a cell with two cathodes, and what it means for the thinnest place."""

from pint import Quantity

from process.chemistry.constants import FARADAY, MOLAR_GAS
from process.chemistry.errors import ChemistryError
from process.chemistry.formula import formula
from process.chemistry.terms import CURRENT_DENSITY, LENGTH, MASS, RATIO, Rule, Term, nominal
from records.units import ureg

DISTANCES = RATIO.called("K", "distance of the far cathode over that of the near", Rule.POSITIVE)
METAL = RATIO.called("M", "metal on the near cathode over that on the far", Rule.POSITIVE)
THROW = Term("T", "throwing power", "pct", Rule.ANY)
FACTOR = RATIO.called("f", "distribution factor", Rule.FRACTION)


@formula(
    DISTANCES,
    far=LENGTH.called("L₁", "anode to the far place"),
    near=LENGTH.called("L₂", "anode to the near place"),
)
def distance_ratio(far: Quantity, near: Quantity) -> Quantity:
    """How many times farther from the anode the far place lies.

    Equation: K [1] = L₁ [mm] / L₂ [mm]
    Errors: a distance of zero or less.
    Source: definition of the primary ratio of a two-cathode cell.

    >>> distance_ratio(250 * ureg.mm, 50 * ureg.mm).magnitude
    5.0
    """
    return far / near


@formula(
    METAL,
    near_mass=MASS.called("m₂", "gain of the near cathode", Rule.POSITIVE),
    far_mass=MASS.called("m₁", "gain of the far cathode", Rule.POSITIVE),
)
def metal_ratio(near_mass: Quantity, far_mass: Quantity) -> Quantity:
    """How many times more metal the near cathode of the cell took.

    Equation: M [1] = m₂ [g] / m₁ [g]
    Errors: a gain of zero or less: where the far cathode took nothing the bath does not throw at all.
    Source: definition of the metal ratio of a two-cathode cell.

    >>> metal_ratio(3.2 * ureg.g, 1 * ureg.g).magnitude
    3.2
    """
    return near_mass / far_mass


@formula(THROW, distances=DISTANCES, metal=METAL)
def haring_blum(distances: float | Quantity, metal: float | Quantity) -> Quantity:
    """Throwing power by Haring and Blum; a perfect bath reaches 80 % at K = 5, so K is always told beside it.

    Equation: T [%] = (K [1] − M [1]) / K
    Errors: a ratio of zero or less.
    Source: Haring and Blum, Trans. Am. Electrochem. Soc. 44 (1923) 313, as quoted in trade texts.

    >>> round(haring_blum(5, 3.5).m_as("pct"), 1)
    30.0
    """
    return (_ratio(distances) - _ratio(metal)) / _ratio(distances)


@formula(THROW, distances=DISTANCES, metal=METAL)
def field_number(distances: float | Quantity, metal: float | Quantity) -> Quantity:
    """Throwing power by Field’s number, from −100 % (nothing reaches the far cathode) to 100 % (even).

    Equation: T [%] = (K [1] − M [1]) / (K + M − 2)
    Errors: a ratio of zero or less; K + M = 2, where the cell tells nothing.
    Source: Field, Bull. Inst. Metal Finish. 7 (1932–34), as quoted in trade texts.

    >>> round(field_number(5, 3.5).m_as("pct"), 2)
    23.08
    """
    k, m = _ratio(distances), _ratio(metal)
    _refuse_nothing(k + m - 2, "Field’s number is undefined where K + M = 2; hang the far cathode farther away")
    return (k - m) / (k + m - 2)


@formula(THROW, distances=DISTANCES, metal=METAL)
def heatley_number(distances: float | Quantity, metal: float | Quantity) -> Quantity:
    """Throwing power by Heatley, from 0 % (as the distances) to 100 % (even).

    Equation: T [%] = (K [1] − M [1]) / (K − 1)
    Errors: a ratio of zero or less; K = 1, where both cathodes hang alike.
    Source: Heatley’s scale as given in trade texts, from memory.

    >>> heatley_number(5, 2).m_as("pct")
    75.0
    """
    k = _ratio(distances)
    _refuse_nothing(k - 1, "Heatley’s scale is undefined where both hang equally far; hang one farther away")
    return (k - _ratio(metal)) / (k - 1)


@formula(METAL, distances=DISTANCES, throwing_power=THROW)
def metal_ratio_expected(distances: float | Quantity, throwing_power: Quantity) -> Quantity:
    """Metal near over metal far that a bath of this Field number lays on places so far apart.

    Equation: M [1] = (K [1]·(1 − T [%]) + 2·T) / (1 + T)
    Errors: a ratio of zero or less; a throwing power of −100 %, where nothing reaches the far place.
    Source: Field’s number solved for M; that the number holds for other distances is an approximation.

    >>> round(metal_ratio_expected(1.5, ureg.Quantity(25, "pct")).magnitude, 3)
    1.3
    """
    share = throwing_power.to("")
    _refuse_nothing(1 + share, "at −100 % nothing reaches the far place, so no ratio can be expected")
    return (_ratio(distances) * (1 - share) + 2 * share) / (1 + share)


@formula(FACTOR, metal=METAL)
def factor_of_two_places(metal: float | Quantity) -> Quantity:
    """Distribution factor of a face of which half grows as the near place and half as the far.

    Equation: f [1] = 2 / (1 + M [1])
    Errors: a ratio of zero or less; M below 1, where the far place would be the thicker.
    Source: mean of two equal parts, as in the cell; a hollow narrower than it is deep stays thinner still.

    >>> round(factor_of_two_places(1.3).magnitude, 3)
    0.87
    """
    if nominal(_ratio(metal).magnitude) < 1:
        raise ChemistryError("metal", "below 1 the far place would be the thicker; look at the weighings")
    return 2 / (1 + _ratio(metal))


@formula(
    RATIO.called("W", "Wagner number"),
    slope=Term("s", "slope of the polarisation curve", "ohm*m**2", Rule.NOT_NEGATIVE),
    conductivity=Term("κ", "conductivity of the bath", "S/m", Rule.POSITIVE),
    length=Term("l", "size of the piece", "m", Rule.POSITIVE),
)
def wagner_number(slope: Quantity, conductivity: Quantity, length: Quantity) -> Quantity:
    """Whether the reaction or the geometry rules: far below 1 the edges grow thick, far above 1 the wall is even.

    Equation: W [1] = κ [S/m]·s [ohm·m²] / l [m]
    Errors: a negative slope; a conductivity or size of zero or less.
    Source: IUPAC Gold Book, entry C01456.

    >>> Q = ureg.Quantity
    >>> round(wagner_number(Q(0.5, "mohm*m**2"), Q(20, "S/m"), Q(0.02, "m")).magnitude, 6)
    0.5
    """
    return conductivity * slope / length


@formula(
    Term("s", "slope of the polarisation curve", "ohm*m**2"),
    FARADAY,
    MOLAR_GAS,
    current_density=CURRENT_DENSITY.called("j", "current density", Rule.POSITIVE),
    temperature=Term("T", "temperature", "K", Rule.POSITIVE),
    transfer=RATIO.called("α", "transfer coefficient", Rule.FRACTION),
)
def tafel_slope(current_density: Quantity, temperature: Quantity, transfer: float | Quantity = 0.5) -> Quantity:
    """Slope of the polarisation curve where nobody measured it, by Tafel’s law.

    Equation: s [ohm·m²] = R [J/(mol·K)]·T [K] / (α [1]·F [C/mol]·j [A/dm²])
    Errors: a current density or temperature of zero or less; a coefficient that is not more than 0 and at most 1.
    Source: derivative of Tafel’s law; Newman and Thomas-Alyea, Electrochemical Systems, 3rd ed., ch. 18, from memory.

    >>> Q = ureg.Quantity
    >>> s = tafel_slope(Q(2, "A/dm**2"), Q(298.15, "K"))
    >>> round(wagner_number(s, Q(20, "S/m"), Q(0.05, "m")).magnitude, 3)
    0.103
    """
    return MOLAR_GAS.quantity * temperature.to("K") / (transfer * FARADAY.quantity * current_density)


def _ratio(value: float | Quantity) -> Quantity:
    return ureg.Quantity(value).to("")


def _refuse_nothing(value: Quantity, words: str) -> None:
    if abs(float(nominal(value.magnitude))) < 1e-12:
        raise ChemistryError("ratio", words)
