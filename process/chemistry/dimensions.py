"""How size changes along a chain of moulds and casts."""

import math
from collections.abc import Sequence

from pint import Quantity

from process.chemistry.formula import formula
from process.chemistry.terms import AREA, LENGTH, RATIO, THICKNESS, VOLUME, Rule
from records.units import ureg

CHANGES = RATIO.called("c", "linear change of each transfer (shrinkage negative)", Rule.ANY).several(
    "Π(1+c)", "linear change of each transfer (shrinkage negative)"
)
NO_SKIN = ureg.Quantity(0.0, "mm")


@formula(
    LENGTH.called("D", "dimension of the copy"),
    original=LENGTH.called("D₀", "dimension of the model"),
    changes=CHANGES,
    skin=THICKNESS.called("d", "thickness of a skin on each side"),
)
def predicted_dimension(original: Quantity, changes: Sequence[Quantity | float], skin: Quantity = NO_SKIN) -> Quantity:
    """Dimension that a copy should have after its chain of transfers, and a skin on both sides if it has one.

    Equation: D [mm] = D₀ [mm]·Π(1+c) [1] + 2·d [mm]
    Errors: a dimension of zero or less; a change that is no ratio; a negative skin.
    Source: product of linear changes; any text on moulding.

    >>> round(predicted_dimension(58.40 * ureg.mm, [-0.0008]).magnitude, 3)
    58.353
    """
    return original * linear_scale(changes) + 2 * skin


def linear_scale(changes: Sequence[Quantity | float]) -> Quantity:
    """Scale of a copy after its chain of transfers.

    Equation: s [1] = Π(1 + c) [1]
    Errors: a change that is no ratio, or no change at all.
    Source: product of linear changes; any text on moulding.

    >>> round(linear_scale([-0.0025, 0.0020, -0.0025]).magnitude, 6)
    0.996996
    """
    CHANGES.check("changes", changes)
    return math.prod((1 + ureg.Quantity(each).to("") for each in changes), start=ureg.Quantity(1.0))


@formula(
    RATIO.called("x", "deviation", Rule.ANY),
    measured=LENGTH.called("D₁", "measured"),
    predicted=LENGTH.called("D", "predicted"),
)
def deviation(measured: Quantity, predicted: Quantity) -> Quantity:
    """How far a measured dimension lies from the predicted one.

    Equation: x [1] = D₁ [mm] / D [mm] − 1
    Errors: a dimension of zero or less.
    Source: definition of a relative deviation.

    >>> round(deviation(44.82 * ureg.mm, 45.0 * ureg.mm).m_as("pct"), 2)
    -0.4
    """
    return measured / predicted - 1


@formula(
    AREA.called("A", "surface of the piece"),
    faces=AREA.several("ΣA", "areas of the faces"),
    diameter=LENGTH,
    height=LENGTH.called("h", "thickness of the piece"),
)
def disc_surface(faces: Sequence[Quantity], diameter: Quantity, height: Quantity) -> Quantity:
    """Surface of a round piece: its faces, and the edge unrolled.

    Equation: A [dm²] = ΣA [dm²] + π·D [mm]·h [mm]
    Errors: no face at all; an area, diameter or thickness of zero or less.
    Source: mantle of a cylinder; any text on geometry.

    >>> faces = [ureg.Quantity(0.081, "dm**2")] * 2
    >>> round(disc_surface(faces, 31.2 * ureg.mm, 2.0 * ureg.mm).m_as("cm**2"), 2)
    18.16
    """
    return sum(faces[1:], start=faces[0]) + math.pi * diameter * height


@formula(
    VOLUME.called("V", "volume to fill"),
    original=VOLUME.called("V₀", "volume of the model", Rule.POSITIVE),
    changes=CHANGES,
    shells=VOLUME.called("V₁", "volume of the shells"),
)
def fill_volume(original: Quantity, changes: Sequence[Quantity | float], shells: Quantity) -> Quantity:
    """Volume left inside the shells of a hollow copy.

    Equation: V [cm³] = V₀ [cm³]·Π(1+c)³ [1] − V₁ [cm³]
    Errors: a model without volume; a negative volume of shells; a change that is no ratio.
    Source: volume goes with the cube of the linear scale.

    >>> cm3 = ureg.cm**3
    >>> shells = 5.65 / 8.92 * cm3
    >>> round(fill_volume(15.82 / 10.31 * cm3, [-0.0007], shells).magnitude, 3)
    0.898
    """
    return original * linear_scale(changes) ** 3 - shells
