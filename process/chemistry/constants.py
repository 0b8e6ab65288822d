"""Constants of nature and molar masses, each standing once with its unit and source."""

from dataclasses import dataclass

from pint import Quantity

from process.chemistry.elements import ATOMIC_WEIGHT_SOURCE, ATOMIC_WEIGHTS
from records.units import ureg


@dataclass(frozen=True)
class Constant:
    """A figure that is looked up, not measured here."""

    symbol: str
    label: str
    quantity: Quantity
    unit: str
    source: str


def _constant(symbol: str, label: str, value: float, unit: str, source: str) -> Constant:
    return Constant(symbol, label, ureg.Quantity(value, unit), unit, source)


def _molar_mass(label: str, **atoms: int) -> Constant:
    total = sum(ATOMIC_WEIGHTS[element] * count for element, count in atoms.items())
    return _constant("M", f"molar mass of {label}", total, "g/mol", f"sum of {ATOMIC_WEIGHT_SOURCE}")


SI_2019 = "SI Brochure, 9th edition (2019), exact; CODATA 2018, doi:10.1103/RevModPhys.93.025010"

ELEMENTARY_CHARGE = _constant("e", "elementary charge", 1.602176634e-19, "C", SI_2019)
AVOGADRO = _constant("Nᴀ", "Avogadro constant", 6.02214076e23, "1/mol", SI_2019)
BOLTZMANN = _constant("kʙ", "Boltzmann constant", 1.380649e-23, "J/K", SI_2019)
FARADAY = Constant(
    "F", "Faraday constant", ELEMENTARY_CHARGE.quantity * AVOGADRO.quantity, "C/mol", f"F = e·Nᴀ; {SI_2019}"
)
MOLAR_GAS = Constant(
    "R", "molar gas constant", BOLTZMANN.quantity * AVOGADRO.quantity, "J/(mol*K)", f"R = kʙ·Nᴀ; {SI_2019}"
)
ATMOSPHERE = _constant("p", "standard atmosphere", 101.325, "kPa", "10th CGPM (1954), resolution 4, exact")

COPPER = _molar_mass("copper", Cu=1)
CHLORIDE = _molar_mass("chloride", Cl=1)
SULPHURIC_ACID = _molar_mass("sulphuric acid, H₂SO₄", H=2, S=1, O=4)
COPPER_SULPHATE = _molar_mass("copper sulphate, CuSO₄·5H₂O", Cu=1, S=1, O=9, H=10)
COPPER_IN_SALT = Constant(
    "w",
    "copper in CuSO₄·5H₂O by mass",
    (COPPER.quantity / COPPER_SULPHATE.quantity).to(""),
    "",
    f"M(Cu)/M(CuSO₄·5H₂O), {ATOMIC_WEIGHT_SOURCE}",
)
ACID_PER_COPPER = Constant(
    "r",
    "acid used per copper dissolved, by mass",
    (SULPHURIC_ACID.quantity / COPPER.quantity).to(""),
    "",
    f"M(H₂SO₄)/M(Cu), {ATOMIC_WEIGHT_SOURCE}",
)
