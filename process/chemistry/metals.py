"""The metals that are deposited, keyed by the ion they come from."""

import math
from dataclasses import dataclass, replace
from functools import cached_property

from pint import Quantity

from process.chemistry.constants import FARADAY, Constant
from process.chemistry.elements import ATOMIC_WEIGHT_SOURCE, ATOMIC_WEIGHTS
from process.chemistry.errors import ChemistryError
from records.units import ureg

HANDBOOK = "handbook value at 20 °C, from memory"
TRADE_TABLE = "trade tables of electrochemical equivalents"


@dataclass(frozen=True)
class Ion:
    """A metal ion: what one mole weighs, how many electrons it takes, how dense its deposit is."""

    code: str
    name: str
    element: str
    valence_count: int
    density: Quantity
    density_source: str

    @cached_property
    def atomic_weight(self) -> Quantity:
        return ureg.Quantity(ATOMIC_WEIGHTS[self.element], "g/mol")

    @cached_property
    def equivalent(self) -> Quantity:
        """Mass per charge at 100 % efficiency, k = M/(z·F)."""
        return (self.atomic_weight / (self.valence_count * FARADAY.quantity)).to("g/(A*h)")

    def fact(self, symbol: str) -> Constant:
        """The ion’s figure that a formula writes as M, z, k or ρ."""
        metal = self.name.split("(")[0]
        label, quantity, unit, source = {
            "M": (f"atomic weight of {metal}", self.atomic_weight, "g/mol", ATOMIC_WEIGHT_SOURCE),
            "z": (
                f"electrons per ion {written(self.code)}",
                ureg.Quantity(self.valence_count),
                "",
                "the ion’s charge",
            ),
            "k": (f"electrochemical equivalent, {written(self.code)}", self.equivalent, "g/(A*h)", "k = M/(z·F)"),
            "ρ": (f"density of deposited {metal}", self.density, "g/cm**3", self.density_source),
        }[symbol]
        return Constant(symbol, label, quantity, unit, source)


RAISED = str.maketrans("0123456789+", "⁰¹²³⁴⁵⁶⁷⁸⁹⁺")


def written(code: str) -> str:
    """The ion as a chemist writes it, its charge raised.

    Equation: none, it is spelling
    Errors: none; what is no charge stays as it is
    Source: IUPAC Red Book 2005, IR-5.3.2.2

    >>> written("Cu2+"), written("Ag+")
    ('Cu²⁺', 'Ag⁺')
    """
    symbol = code.rstrip("0123456789+")
    return symbol + code[len(symbol) :].translate(RAISED)


def _ion(code: str, name: str, density: float, source: str) -> Ion:
    return Ion(
        code, name, code.rstrip("+0123456789"), int(code[-2]) if code[-2].isdigit() else 1,
        ureg.Quantity(density, "g/cm**3"), source,
    )  # fmt: skip


COPPER_DENSITY = "typical value of a copper trade association’s data sheet; deposits 8.85–8.96 g/cm³ (common practice)"

IONS: dict[str, Ion] = {
    ion.code: ion
    for ion in (
        _ion("Cu2+", "copper(II)", 8.92, COPPER_DENSITY),
        _ion("Cu+", "copper(I)", 8.92, COPPER_DENSITY),
        _ion("Ag+", "silver(I)", 10.49, "OpenStax College Physics 2e, table 11.1"),
        _ion("Au+", "gold(I)", 19.3, HANDBOOK),
        _ion("Au3+", "gold(III)", 19.3, HANDBOOK),
        _ion("Ni2+", "nickel(II)", 8.90, HANDBOOK),
        _ion("Fe2+", "iron(II)", 7.87, HANDBOOK),
        _ion("Zn2+", "zinc(II)", 7.14, "OpenStax Chemistry 2e, section 17.7"),
        _ion("Sn2+", "tin(II)", 7.30, TRADE_TABLE),
        _ion("Sn4+", "tin(IV)", 7.30, TRADE_TABLE),
        _ion("Cr3+", "chromium(III)", 7.19, "OpenStax Chemistry 2e, section 17.7"),
        _ion("Cr6+", "chromium(VI)", 7.19, "OpenStax Chemistry 2e, section 17.7"),
        _ion("Pb2+", "lead(II)", 11.34, HANDBOOK),
        _ion("Cd2+", "cadmium(II)", 8.65, HANDBOOK),
        _ion("Co2+", "cobalt(II)", 8.90, TRADE_TABLE),
        _ion("In3+", "indium(III)", 7.31, HANDBOOK),
        _ion("Sb3+", "antimony(III)", 6.69, HANDBOOK),
        _ion("Pd2+", "palladium(II)", 12.02, HANDBOOK),
        _ion("Rh3+", "rhodium(III)", 12.41, HANDBOOK),
        _ion("Pt2+", "platinum(II)", 21.45, HANDBOOK),
        _ion("Pt4+", "platinum(IV)", 21.45, HANDBOOK),
    )
}


def ion(code: str, density: Quantity | None = None) -> Ion:
    """The metal that deposits from an ion, with its own density of deposit if one was measured.

    Equation: k [g/(A·h)] = M [g/mol] / (z [1] · F [C/mol])
    Errors: an ion that is not listed; a density that is no density.
    Source: valences are those of the ions; atomic weights and densities carry their own sources.

    >>> ion("Cu2+").name
    'copper(II)'
    """
    try:
        known = IONS[code.strip()]
    except KeyError:
        raise ChemistryError("ion", f"“{code}” is not known; choose one of {', '.join(IONS)}") from None
    return known if density is None else _with_density(known, density)


def _with_density(known: Ion, density: Quantity) -> Ion:
    if not isinstance(density, Quantity) or not density.check("[mass]/[length]**3"):
        raise ChemistryError("density", f"{density} is no density; give one, for example in g/cm³")
    value = density.m_as("g/cm**3")
    nominal = getattr(value, "nominal_value", value)
    if not (math.isfinite(nominal) and nominal > 0):
        raise ChemistryError("density", f"must be a number above zero; {nominal:g} g/cm³ was given")
    return replace(known, density=density.to("g/cm**3"), density_source="stated with this record")
