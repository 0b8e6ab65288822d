"""What temperature does to a length: a piece is compared at 20 °C, whatever the day of its measuring."""

from pint import Quantity

from process.chemistry.constants import Constant
from process.chemistry.formula import formula
from process.chemistry.terms import LENGTH, Rule, Term
from records.units import ureg

COEFFICIENT = Term("α", "linear expansion", "1/K", Rule.ANY)
REFERENCE = ureg.Quantity(20.0, "degC")
OPENSTAX = "OpenStax College Physics 2e, table 13.2"


def _coefficient(name: str, parts_per_million: float, source: str) -> Constant:
    return Constant("α", f"linear expansion of {name}", ureg.Quantity(parts_per_million * 1e-6, "1/K"), "1/K", source)


# A word of a thing's materials, and how that material answers to warmth; of several the first that is named counts.
EXPANSIONS: dict[str, Constant] = {
    "copper": _coefficient("copper", 16.8, "Copper Development Association, 25 to 100 °C"),
    "bronze": _coefficient("bronze", 18, "handbook value, from memory"),
    "brass": _coefficient("brass", 19, OPENSTAX),
    "silver": _coefficient("silver", 18, OPENSTAX),
    "gold": _coefficient("gold", 14, OPENSTAX),
    "lead": _coefficient("lead", 29, OPENSTAX),
    "gypsum": _coefficient("gypsum plaster", 18, "16 to 20, from memory"),
    "plaster": _coefficient("plaster", 18, "16 to 20, from memory"),
    "silicone": _coefficient("silicone rubber", 275, "250 to 300, from memory"),
    "wax": _coefficient("wax", 500, "abstract of a study of pattern waxes, 27 to 47 °C"),
}


def expansion_of(materials: str) -> Constant | None:
    """The expansion of what a thing is made of, by the first material that its description names.

    Equation: none; a table of coefficients α [1/K].
    Errors: none; unknown materials give None.
    Source: beside each coefficient.

    >>> expansion_of("Leaded bronze, brown patina").label, expansion_of("cardboard")
    ('linear expansion of bronze', None)
    """
    words = materials.lower()
    places = {name: words.find(name) for name in EXPANSIONS if name in words and f"{name}ed" not in words}
    return EXPANSIONS[min(places, key=lambda name: places[name])] if places else None


@formula(
    LENGTH.called("D₂", "length at the other temperature"),
    length=LENGTH.called("D₁", "length as measured"),
    coefficient=COEFFICIENT,
    measured_at=Term("t₁", "measured at", "degC", Rule.ANY),
    reference=Term("t₂", "stated at", "degC", Rule.ANY),
)
def length_at(
    length: Quantity, coefficient: Quantity, measured_at: Quantity, reference: Quantity = REFERENCE
) -> Quantity:
    """Length that a piece has at another temperature than that of its measuring.

    Equation: D₂ [mm] = D₁ [mm]·(1 + α [1/K]·(t₂ [°C] − t₁ [°C]))
    Errors: a length of zero or less; a temperature that is none.
    Source: linear thermal expansion; OpenStax College Physics 2e, section 13.2.

    >>> grown = length_at(ureg.Quantity(100, "mm"), EXPANSIONS["copper"].quantity, ureg.Quantity(25, "degC"))
    >>> round(grown.magnitude, 4)
    99.9916
    """
    warmer_k = reference.m_as("degC") - measured_at.m_as("degC")
    return length * (1 + coefficient * ureg.Quantity(warmer_k, "K"))
