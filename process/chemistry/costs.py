"""What a run costs, from prices that the museum edits; ¤ stands for the currency of its price list."""

from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.formula import formula
from process.chemistry.terms import CHARGE, MASS, RATIO, TIME, Rule, Term, nominal
from records.units import ureg

MONEY = Term("C", "cost", "money")
ENERGY = Term("E", "energy from the wall", "kWh")
CHANCE = RATIO.called("p", "share of runs that fail", Rule.SHARE)


@formula(MONEY.called("C", "labour"), time=TIME.called("t", "hours attended"), rate=Term("c", "wage", "money/h"))
def labour_cost(time: Quantity, rate: Quantity) -> Quantity:
    """Cost of the hours that somebody attends.

    Equation: C [¤] = t [h]·c [¤/h]
    Errors: a negative time or rate.
    Source: hours times rate; labour is by far the largest part (common practice).

    >>> labour_cost(ureg.Quantity(2, "h"), ureg.Quantity(40, "money/h")).magnitude
    80
    """
    return time * rate


@formula(MONEY.called("C", "metal"), mass=MASS, price=Term("c", "price of the metal", "money/kg"))
def metal_cost(mass: Quantity, price: Quantity) -> Quantity:
    """Cost of the metal that is deposited.

    Equation: C [¤] = m [g]·c [¤/kg]
    Errors: a negative mass or price.
    Source: mass times price.

    >>> metal_cost(500 * ureg.g, ureg.Quantity(14, "money/kg")).magnitude
    7.0
    """
    return mass * price


@formula(MONEY.called("C", "energy"), energy=ENERGY, price=Term("c", "price of energy", "money/kWh"))
def energy_cost(energy: Quantity, price: Quantity) -> Quantity:
    """Cost of the energy from the wall.

    Equation: C [¤] = E [kWh]·c [¤/kWh]
    Errors: a negative energy or price.
    Source: energy times price.

    >>> round(energy_cost(0.33 * ureg.kWh, ureg.Quantity(0.3, "money/kWh")).magnitude, 3)
    0.099
    """
    return energy * price


@formula(
    MONEY.called("C", "share of the bath"),
    charge=CHARGE,
    bath_cost=MONEY.called("C₁", "cost of making up the bath"),
    life=CHARGE.called("Q₁", "charge that a bath lives", Rule.POSITIVE),
)
def bath_share(charge: Quantity, bath_cost: Quantity, life: Quantity) -> Quantity:
    """Share of the bath that a charge uses up.

    Equation: C [¤] = C₁ [¤]·Q [A·h] / Q₁ [A·h]
    Errors: a negative charge or cost; a life of zero or less.
    Source: common practice: charge of the run over that of the ledger.

    >>> Q = ureg.Quantity
    >>> round(bath_share(Q(36.85, "A*h"), Q(600, "money"), Q(6000, "A*h")).magnitude, 3)
    3.685
    """
    return bath_cost * charge / life


@formula(RATIO.called("n", "attempts to be expected"), failure=CHANCE)
def expected_attempts(failure: float | Quantity) -> Quantity:
    """How often one must try, on average, until a run succeeds.

    Equation: n [1] = 1 / (1 − p [1])
    Errors: a share below 0 or above 1; where every run fails no number of attempts is enough.
    Source: mean of the geometric distribution.

    >>> expected_attempts(0.2).magnitude
    1.25
    """
    share = ureg.Quantity(failure).to("")
    if nominal(share.magnitude) >= 1:
        raise ChemistryError("failure", "where every run fails no number of attempts is enough; mend the cause first")
    return 1 / (1 - share)


@formula(
    MONEY,
    parts=MONEY.several("ΣC", "labour, metal, energy, share of the bath"),
    attempts=RATIO.called("n", "attempts to be expected", Rule.POSITIVE),
    outside=MONEY.called("C₁", "work outside, paid once"),
)
def cost_of_run(parts: list[Quantity], attempts: float | Quantity, outside: Quantity) -> Quantity:
    """Cost to be expected until one run succeeds; what is done outside comes after and is paid once.

    Equation: C [¤] = n [1]·ΣC [¤] + C₁ [¤]
    Errors: no parts; a negative part; attempts of zero or less.
    Source: sum of the parts; failed attempts cost all but the work outside (common practice).

    >>> Q = ureg.Quantity
    >>> cost_of_run([Q(80, "money"), Q(7, "money")], 1.25, Q(50, "money")).magnitude
    158.75
    """
    return attempts * sum(parts[1:], start=parts[0]) + outside


@formula(MONEY, parts=MONEY.several("ΣC", "labour, metal, energy, share of the bath, bills"))
def cost_of_copy(parts: list[Quantity]) -> Quantity:
    """What a piece has cost, once it is made: nothing is expected any more, everything is counted.

    Equation: C [¤] = ΣC [¤]
    Errors: no parts; a negative part.
    Source: sum of the parts; failed attempts are parts of their own (common practice).

    >>> Q = ureg.Quantity
    >>> cost_of_copy([Q(546, "money"), Q(0.69, "money")]).magnitude
    546.69
    """
    return sum(parts[1:], start=parts[0])
