"""Areas of the shapes that hang on a rail: plate, wire, cone, cap, a turned profile, and foil laid over and weighed."""

import math
from collections.abc import Sequence

import numpy as np
from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.formula import formula
from process.chemistry.terms import AREA, LENGTH, MASS, Rule, nominal
from records.units import ureg

DIAMETER = LENGTH.called("D", "diameter")
HEIGHT = LENGTH.called("h", "height", Rule.NOT_NEGATIVE)


@formula(AREA, length=LENGTH.called("a", "length"), width=LENGTH.called("b", "width"))
def plate_area(length: Quantity, width: Quantity) -> Quantity:
    """Area of one side of a plate or strip.

    Equation: A [dm²] = a [mm]·b [mm]
    Errors: a length or width of zero or less.
    Source: area of a rectangle.

    >>> round(plate_area(150 * ureg.mm, 100 * ureg.mm).magnitude, 6)
    1.5
    """
    return length * width


@formula(AREA, diameter=DIAMETER, length=LENGTH.called("l", "length"))
def cylinder_area(diameter: Quantity, length: Quantity) -> Quantity:
    """Area round a cylinder or wire, without its ends.

    Equation: A [dm²] = π·D [mm]·l [mm]
    Errors: a diameter or length of zero or less.
    Source: lateral area of a right circular cylinder.

    >>> round(cylinder_area(1.5 * ureg.mm, 200 * ureg.mm).magnitude, 4)
    0.0942
    """
    return math.pi * diameter * length


@formula(
    AREA,
    diameter=DIAMETER.called("D₁", "diameter at the foot"),
    upper_diameter=DIAMETER.called("D₂", "diameter at the top", Rule.NOT_NEGATIVE),
    height=HEIGHT,
)
def cone_area(diameter: Quantity, upper_diameter: Quantity, height: Quantity) -> Quantity:
    """Area round a cone, whole or cut off, without its ends; with the height zero it is a flat ring.

    Equation: A [dm²] = π/2·(D₁ [mm] + D₂ [mm])·√((D₁ − D₂)²/4 + h² [mm])
    Errors: a foot of zero or less; a negative top or height; foot and top alike without a height.
    Source: lateral area of a conical frustum.

    >>> round(cone_area(60 * ureg.mm, 0 * ureg.mm, 40 * ureg.mm).magnitude, 4)
    0.4712
    """
    slant = _slant((diameter - upper_diameter) / 2, height)
    if not nominal(slant.magnitude) > 0:
        raise ChemistryError("height", "between two circles alike and without a height there is nothing; measure again")
    return math.pi / 2 * (diameter + upper_diameter) * slant


@formula(AREA, diameter=DIAMETER.called("D", "diameter at the rim"), height=HEIGHT)
def cap_area(diameter: Quantity, height: Quantity) -> Quantity:
    """Curved area of a cap cut from a sphere: a dish, a watch glass, a domed button.

    Equation: A [dm²] = π·(D² [mm]/4 + h² [mm])
    Errors: a diameter of zero or less; a negative height.
    Source: area of a spherical cap (Archimedes).

    >>> round(cap_area(300 * ureg.mm, 40 * ureg.mm).magnitude, 3)
    7.571
    """
    return math.pi * (diameter**2 / 4 + height**2)


@formula(
    AREA,
    radii=LENGTH.called("r", "radii along the profile", Rule.NOT_NEGATIVE).several("r", "radii along the profile"),
    heights=LENGTH.called("z", "heights of the same points", Rule.ANY).several("z", "heights of the same points"),
)
def revolution_area(radii: Sequence[Quantity], heights: Sequence[Quantity]) -> Quantity:
    """Area of a turned piece from the points of its profile, joined by straight lines.

    Equation: A [dm²] = π·Σ(rᵢ + rᵢ₊₁)·√((rᵢ − rᵢ₊₁)² + (zᵢ − zᵢ₊₁)²), r [mm], z [mm]
    Errors: fewer than two points; as many radii as heights are needed; a negative radius; a profile without length.
    Source: first theorem of Pappus and Guldin, each straight part a conical frustum.

    >>> mm = ureg.mm
    >>> round(revolution_area([10 * mm, 10 * mm], [0 * mm, 100 * mm]).magnitude, 4)
    0.6283
    """
    if len(radii) != len(heights) or len(radii) < 2:
        raise ChemistryError("radii", "give at least two points, each with a radius and a height")
    parts = [_frustum(*pair) for pair in zip(zip(radii, heights, strict=True), _next(radii, heights), strict=False)]
    whole = sum(parts[1:], start=parts[0])
    if not np.all(nominal(whole.m_as("dm**2")) > 0):
        raise ChemistryError("radii", "the profile has no length or lies on the axis; give the points of its outline")
    return whole


def _next(radii: Sequence[Quantity], heights: Sequence[Quantity]) -> list[tuple[Quantity, Quantity]]:
    return list(zip(radii[1:], heights[1:], strict=True))


def _frustum(one: tuple[Quantity, Quantity], other: tuple[Quantity, Quantity]) -> Quantity:
    (r1, z1), (r2, z2) = one, other
    return math.pi * (r1 + r2) * _slant(r1 - r2, z1 - z2)


def _slant(across: Quantity, along: Quantity) -> Quantity:
    """Length of a straight part; of a point written twice none, for a root has no slope at zero and so no ±."""
    if nominal(across.magnitude) == 0 and nominal(along.magnitude) == 0:
        return ureg.Quantity(0.0, across.units)
    return (across**2 + along**2) ** 0.5


@formula(
    AREA,
    foil_mass=MASS.called("m", "foil that covered the face", Rule.POSITIVE),
    sample_mass=MASS.called("m₁", "mass of a sample of the foil", Rule.POSITIVE),
    sample_area=AREA.called("A₁", "area of that sample"),
)
def foil_area(foil_mass: Quantity, sample_mass: Quantity, sample_area: Quantity) -> Quantity:
    """Area of a face that was covered once with foil, from the weight of the foil.

    Equation: A [dm²] = m [g] / m₁ [g]·A₁ [dm²]
    Errors: a mass or an area of zero or less.
    Source: common practice; the foil is of even thickness, folds and overlaps count twice.

    >>> foil_area(3.44 * ureg.g, 0.4 * ureg.g, ureg.Quantity(1, "dm**2")).magnitude
    8.6
    """
    return foil_mass / sample_mass * sample_area
