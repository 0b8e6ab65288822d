"""The life of a bath: its ampere-hour ledger, and the balance of its metal and acid."""

from collections.abc import Sequence

from pint import Quantity

from process.chemistry.constants import ACID_PER_COPPER, COPPER_IN_SALT
from process.chemistry.formula import formula
from process.chemistry.terms import BATH_VOLUME, CHARGE, CONCENTRATION, MASS, Rule, Term
from records.units import ureg

CHARGE_PER_LITRE = Term("q", "charge per litre", "A*h/L")
CHANGE = MASS.called("Δm", "copper gained by the bath", Rule.ANY)
DRAG_OUT = BATH_VOLUME.called("V₁", "bath carried out or spilt, replaced by water", Rule.NOT_NEGATIVE)
ADDED = MASS.called("m₁", "added since")
NOTHING = ureg.Quantity(0.0, "g")


def ledger(opening: Quantity, charges: Sequence[Quantity]) -> tuple[Quantity, ...]:
    """The bath’s ampere-hours after each run.

    Equation: ΣQ(n) [A·h] = Q₀ [A·h] + Q(1) [A·h] + … + Q(n) [A·h]
    Errors: a negative charge, or something that is no charge.
    Source: a running sum.

    >>> from records.units import ureg
    >>> after = ledger(ureg.Quantity(640, "A*h"), [ureg.Quantity(7.87, "A*h"), ureg.Quantity(36.85, "A*h")])
    >>> [round(each.magnitude, 2) for each in after]
    [647.87, 684.72]
    """
    CHARGE.check("opening", opening)
    total, after = opening.to("A*h"), []
    for charge in charges:
        CHARGE.check("charges", charge)
        total = total + charge
        after.append(total)
    return tuple(after)


@formula(CHARGE_PER_LITRE, charge=CHARGE, volume=BATH_VOLUME)
def charge_per_litre(charge: Quantity, volume: Quantity) -> Quantity:
    """How hard a bath has been worked; analysis falls due by it.

    Equation: q [A·h/L] = Q [A·h] / V [L]
    Errors: negative charge; a volume of zero or less.
    Source: common practice; each bath sets its own limit.

    >>> from records.units import ureg
    >>> round(charge_per_litre(ureg.Quantity(288.27, "A*h"), 60 * ureg.L).magnitude, 2)
    4.8
    """
    return charge / volume


@formula(
    CHANGE,
    anode_loss=MASS.called("m₁", "lost by the anodes"),
    deposited=MASS.called("m₂", "deposited"),
    sludge=MASS.called("m₃", "anode sludge"),
)
def copper_gained(anode_loss: Quantity, deposited: Quantity, sludge: Quantity) -> Quantity:
    """Copper that stayed in the bath, what was carried out not yet counted.

    Equation: Δm [g] = m₁ [g] − m₂ [g] − m₃ [g]
    Errors: a negative mass.
    Source: mass balance.

    >>> from records.units import ureg
    >>> round(copper_gained(347 * ureg.g, 335.7 * ureg.g, 3.1 * ureg.g).magnitude, 1)
    8.2
    """
    return anode_loss - deposited - sludge


@formula(
    CONCENTRATION.called("c₁", "copper sulphate expected"),
    COPPER_IN_SALT,
    found=CONCENTRATION.called("c", "copper sulphate at the last analysis"),
    gained=CHANGE,
    drag_out=DRAG_OUT,
    volume=BATH_VOLUME,
    added=ADDED,
)
def predicted_salt(
    found: Quantity, gained: Quantity, drag_out: Quantity, volume: Quantity, added: Quantity = NOTHING
) -> Quantity:
    """Copper sulphate that the next analysis should find.

    Equation: c₁ [g/L] = c [g/L] + (Δm [g]/w [1] + m₁ [g] − c [g/L]·V₁ [L]) / V [L]
    Errors: a negative concentration, drag-out or addition; a volume of zero or less.
    Source: mass balance; small drag-out, replaced by water.

    >>> from records.units import ureg
    >>> L = ureg.L
    >>> round(predicted_salt(209.8 * ureg.g / L, 8.2 * ureg.g, 0.5 * L, 60 * L).magnitude, 1)
    208.6
    """
    return found + (gained / COPPER_IN_SALT.quantity + added - found * drag_out) / volume


@formula(
    CONCENTRATION.called("c₁", "sulphuric acid expected"),
    ACID_PER_COPPER,
    found=CONCENTRATION.called("c", "sulphuric acid at the last analysis"),
    gained=CHANGE,
    drag_out=DRAG_OUT,
    volume=BATH_VOLUME,
    added=ADDED,
)
def predicted_acid(
    found: Quantity, gained: Quantity, drag_out: Quantity, volume: Quantity, added: Quantity = NOTHING
) -> Quantity:
    """Sulphuric acid that the next analysis should find; each mole of copper gained used up one of acid.

    Equation: c₁ [g/L] = c [g/L] − (Δm [g]·r [1] − m₁ [g] + c [g/L]·V₁ [L]) / V [L]
    Errors: a negative concentration, drag-out or addition; a volume of zero or less.
    Source: mass balance with 2 Cu + O₂ + 2 H₂SO₄ → 2 CuSO₄ + 2 H₂O; IUPAC atomic weights.

    >>> from records.units import ureg
    >>> L = ureg.L
    >>> round(predicted_acid(60.2 * ureg.g / L, 8.2 * ureg.g, 0.5 * L, 60 * L).magnitude, 1)
    59.5
    """
    return found - (gained * ACID_PER_COPPER.quantity - added + found * drag_out) / volume
