"""What a titration says about the bath."""

from pint import Quantity

from process.chemistry.constants import CHLORIDE, COPPER_IN_SALT, COPPER_SULPHATE, SULPHURIC_ACID
from process.chemistry.formula import formula
from process.chemistry.terms import CONCENTRATION, MOLARITY, RATIO, SMALL_VOLUME, Rule

TITRANT = SMALL_VOLUME.called("V", "volume of titrant")
SAMPLE = SMALL_VOLUME.called("V₁", "volume of bath titrated", Rule.POSITIVE)
FACTOR = RATIO.called("f", "titre factor", Rule.POSITIVE)
SALT = CONCENTRATION.called("c₁", "copper sulphate, CuSO₄·5H₂O")
ACID = CONCENTRATION.called("c₁", "sulphuric acid, H₂SO₄")


@formula(SALT, COPPER_SULPHATE, titrant=TITRANT, molarity=MOLARITY, sample=SAMPLE, factor=FACTOR)
def copper_sulphate_found(titrant: Quantity, molarity: Quantity, sample: Quantity, factor: float = 1.0) -> Quantity:
    """Copper sulphate found by EDTA or by iodide and thiosulphate, one mole of titrant to one of copper.

    Equation: c₁ [g/L] = V [mL]·c [mol/L]·f [1]·M [g/mol] / V₁ [mL]
    Errors: a negative titrant volume; a concentration, factor or sample of zero or less.
    Source: complexometric and iodometric titration of copper, 1:1; common practice.

    >>> from records.units import ureg
    >>> molarity = ureg.Quantity(0.1, "mol/L")
    >>> round(copper_sulphate_found(8.146 * ureg.mL, molarity, 1 * ureg.mL).magnitude, 1)
    203.4
    """
    return titrant * molarity * factor * COPPER_SULPHATE.quantity / sample


@formula(CONCENTRATION.called("c₂", "copper"), COPPER_IN_SALT, salt=SALT)
def copper_in_salt(salt: Quantity) -> Quantity:
    """Copper held by the copper sulphate of a bath.

    Equation: c₂ [g/L] = w [1]·c₁ [g/L]
    Errors: a negative concentration.
    Source: molar masses from IUPAC atomic weights.

    >>> from records.units import ureg
    >>> round(copper_in_salt(ureg.Quantity(210, "g/L")).magnitude, 1)
    53.4
    """
    return COPPER_IN_SALT.quantity * salt


@formula(ACID, SULPHURIC_ACID, titrant=TITRANT, molarity=MOLARITY, sample=SAMPLE, factor=FACTOR)
def sulphuric_acid_found(titrant: Quantity, molarity: Quantity, sample: Quantity, factor: float = 1.0) -> Quantity:
    """Free sulphuric acid found by sodium hydroxide, two moles of it to one of acid.

    Equation: c₁ [g/L] = V [mL]·c [mol/L]·f [1]·M [g/mol] / (2·V₁ [mL])
    Errors: a negative titrant volume; a concentration, factor or sample of zero or less.
    Source: neutralisation of a diprotic acid; OpenStax Chemistry 2e, section 4.5.

    >>> from records.units import ureg
    >>> molarity = ureg.Quantity(1, "mol/L")
    >>> round(sulphuric_acid_found(11.66 * ureg.mL, molarity, 10 * ureg.mL).magnitude, 1)
    57.2
    """
    return titrant * molarity * factor * SULPHURIC_ACID.quantity / (2 * sample)


@formula(
    CONCENTRATION.called("c₁", "chloride"),
    CHLORIDE,
    titrant=TITRANT,
    molarity=MOLARITY,
    sample=SAMPLE,
    factor=FACTOR,
)
def chloride_found(titrant: Quantity, molarity: Quantity, sample: Quantity, factor: float = 1.0) -> Quantity:
    """Chloride found by silver nitrate, one mole to one; baths hold milligrams per litre of it.

    Equation: c₁ [g/L] = V [mL]·c [mol/L]·f [1]·M [g/mol] / V₁ [mL]
    Errors: a negative titrant volume; a concentration, factor or sample of zero or less.
    Source: argentometric titration, 1:1; common practice.

    >>> from records.units import ureg
    >>> found = chloride_found(1 * ureg.mL, ureg.Quantity(0.1, "mol/L"), 100 * ureg.mL)
    >>> round(found.m_as("mg/L"), 2)
    35.45
    """
    return titrant * molarity * factor * CHLORIDE.quantity / sample


@formula(
    SAMPLE,
    bath=SMALL_VOLUME.called("V₂", "bath taken"),
    aliquot=SMALL_VOLUME.called("V₃", "aliquot titrated"),
    flask=SMALL_VOLUME.called("V₄", "flask filled to the mark", Rule.POSITIVE),
)
def sample_in_aliquot(bath: Quantity, aliquot: Quantity, flask: Quantity) -> Quantity:
    """Bath that stands in the aliquot of a diluted sample.

    Equation: V₁ [mL] = V₂ [mL]·V₃ [mL] / V₄ [mL]
    Errors: a negative volume; a flask of zero or less.
    Source: dilution; common practice.

    >>> from records.units import ureg
    >>> mL = ureg.mL
    >>> sample_in_aliquot(10 * mL, 10 * mL, 100 * mL).magnitude
    1.0
    """
    return bath * aliquot / flask
