"""Which mixtures of two parts, and which fillings of a copper shell, would have the density that was found."""

from collections.abc import Sequence
from dataclasses import dataclass

from pint import Quantity

from process.chemistry.metals import IONS
from process.chemistry.mixtures import hollow_share, share_of_heavier
from process.summaries.copy_fills import FILLINGS
from process.summaries.densities import Density
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from records.figures import Figure
from records.models import Measurement
from records.units import show, ureg

ALLOYS = (("Au+", "Ag+"), ("Au+", "Cu2+"), ("Ag+", "Cu2+"), ("Cu2+", "Sn2+"), ("Cu2+", "Zn2+"), ("Pb2+", "Cu2+"),
          ("Pb2+", "Sn2+"))  # fmt: skip
SOLDER = ("tin-lead solder, 60 to 40", 8.52)  # trade table, from memory
WARNINGS = (
    "A density alone never proves an original: each line of the table is another piece of the same density.",
    "The rule takes volumes to add up. Alloys shrink a little as they form: tin bronze is denser than it says.",
    "Two parts and no third are taken for granted, and no pores: a hollow place looks like a lighter part.",
    "It may be trusted for alloys rich in gold, less the less gold there is; of silver only where it is almost pure; "
    "of base metals it gives no quantity (Caley, Ohio J. Sci. 49, 1949).",
)


@dataclass(frozen=True)
class KnownDensity:
    """A density on record: weighed in water here, or entered with its kind of evidence."""

    key: str
    figure: Figure
    quantity: Quantity


@dataclass(frozen=True)
class Part:
    name: str
    density: Quantity


@dataclass(frozen=True)
class Mixture:
    """Two parts; `share` is that of the heavier by mass, None where no mixture of them has the density."""

    heavier: Part
    lighter: Part
    share: Figure | None
    sentence: str

    @property
    def name(self) -> str:
        return f"{self.heavier.name} + {self.lighter.name}"


def known_densities(weighed: Sequence[Density], rows: Sequence[Measurement]) -> list[KnownDensity]:
    """Of weighings first, then of what was entered, each with what it may be called."""
    found = [
        KnownDensity(f"weighing-{each.row.pk}", each.figure, each.figure.working.quantity)
        for each in weighed if each.figure.working
    ]  # fmt: skip
    for row in rows:
        if row.density_g_cm3 is not None:
            density = quantity(row, "density_g_cm3")
            method = row.as_typed.get("density_g_cm3", {}).get("method", "")
            shown = Figure("density as entered", row.density_g_cm3, "_g_cm3", row.evidence("density_g_cm3"),
                           row.plus_minus("density_g_cm3"), method)  # fmt: skip
            found.append(KnownDensity(f"measurement-{row.pk}", shown, density))
    return found


def alloys_of(density: Quantity) -> list[Mixture]:
    return [mixture_of(density, _metal(one), _metal(other)) for one, other in ALLOYS]


def filled_of(density: Quantity) -> list[Mixture]:
    """A copper shell with each usual filling."""
    copper, poured = _metal("Cu2+"), [(name, dense) for name, dense, _ in FILLINGS if dense > 0]
    return [mixture_of(density, copper, Part(name, _per_cm3(dense))) for name, dense in (SOLDER, *poured)]


def mixture_of(density: Quantity, one: Part, other: Part) -> Mixture:
    """The parts in whichever order they were named."""
    heavier, lighter = sorted((one, other), key=lambda part: part.density.m_as("g/cm**3"), reverse=True)
    share = figure(
        f"{heavier.name}, by mass", "_pct", share_of_heavier, evidence={"heavier": "quoted", "lighter": "quoted"},
        density=density, heavier=heavier.density, lighter=lighter.density,
    )  # fmt: skip
    if share.value is None:
        return Mixture(heavier, lighter, None, share.note)
    if share.value > 100:
        return Mixture(heavier, lighter, None, f"No mixture of them: it is denser than {heavier.name}.")
    if share.value < 0:
        return Mixture(heavier, lighter, None, _hollow(density, lighter))
    return Mixture(heavier, lighter, share, "")


def _hollow(density: Quantity, lighter: Part) -> str:
    """Lighter than the lighter of the two: then something else is in it, or nothing is."""
    empty = figure("hollow share", "_pct", hollow_share, density=density, solid=lighter.density)
    return (
        f"No mixture of them: it is lighter than {lighter.name}. Hollow places of at least "
        f"{show(empty.value, '_pct', digits=1)} of its volume, or a third and lighter part."
    )


def _metal(code: str) -> Part:
    return Part(IONS[code].name.split("(")[0], IONS[code].density)


def _per_cm3(density: float) -> Quantity:
    return ureg.Quantity(density, "g/cm**3")
