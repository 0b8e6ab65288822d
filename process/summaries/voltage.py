"""What voltage a plan takes, and whether reaction or geometry rules the wall: both hang on the bath's conductivity."""

from dataclasses import dataclass, replace

from pint import Quantity
from uncertainties import ufloat

from process.chemistry.errors import ChemistryError
from process.chemistry.supply import cell_voltage, ohmic_drop
from process.chemistry.throwing import tafel_slope, wagner_number
from process.models import Bath, Cathode, Run
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from process.summaries.planning import PlanSummary
from records.figures import Figure
from records.units import show, ureg

ACID_COPPER = ureg.Quantity(ufloat(175.0, 25.0), "mS/cm")  # about 200 + 50 g/L at 25 °C; an estimate, from memory
ALLOWANCE = ureg.Quantity(ufloat(0.2, 0.1), "V")  # reactions and contacts, soluble copper anodes; common practice
TRANSFER = 0.5  # of copper from acid sulphate; common practice, from memory
GEOMETRY, REACTION = 0.2, 5.0  # below and above these one of the two rules; common practice, from memory


@dataclass(frozen=True)
class Voltage:
    """An estimate, never a measured voltage; `estimate` carries the reason where there is none."""

    drop: Figure
    estimate: Figure


def conductivity_of(bath: Bath) -> tuple[Quantity | None, str]:
    """As measured, or as acid copper usually has it."""
    measured = quantity(bath, "conductivity_ms_cm")
    if measured is not None:
        return measured, f"conductivity of {bath.number} as measured"
    if bath.ion != "Cu2+":
        return None, f"Enter the conductivity of {bath.number}."
    return ACID_COPPER, "conductivity of acid copper, estimated"


def voltage_of(run: Run, plan: PlanSummary) -> Voltage | None:
    """In a uniform field over the mean distance; None where no distance is given or nothing is known of the bath."""
    conductivity, words = conductivity_of(run.bath)
    gaps = [gap for gap in (quantity(run, "nearest_mm"), quantity(run, "farthest_mm")) if gap is not None]
    densities = [stage.density.value for stage in plan.stages if stage.density.value is not None]
    if conductivity is None or not gaps or not densities:
        return None
    density, gap = ureg.Quantity(max(densities), "A/dm**2"), sum(gaps[1:], start=gaps[0]) / len(gaps)
    drop = figure("Taken by the bath itself", "_v", ohmic_drop, current_density=density, gap=gap,
                  conductivity=conductivity)  # fmt: skip
    if drop.working is None:
        return None
    note = f"{words}; anodes larger than the cathodes make it less.".capitalize()
    estimate = figure("Cell voltage", "_v", cell_voltage, drop=drop.working.quantity, allowance=ALLOWANCE)
    return Voltage(_estimated(drop, note), _estimated(estimate, "With 0.1 to 0.3 V for reactions and contacts."))


def _estimated(found: Figure, note: str) -> Figure:
    return replace(found, kind="estimated", note=found.note or note)


def wagner_of(run: Run, cathodes: list[Cathode]) -> Figure | None:
    """Size is the root of the largest face; the slope is that of Tafel's law, since nobody measures it here."""
    conductivity, words = conductivity_of(run.bath)
    if conductivity is None or not cathodes or run.planned_current_density_a_dm2 <= 0:
        return None
    size = ureg.Quantity(max(cathode.face_area_dm2 for cathode in cathodes) ** 0.5 * 100, "mm")
    warm = ureg.Quantity(run.bath.temperature_target_degc, "degC").to("K")
    try:
        slope = tafel_slope(quantity(run, "planned_current_density_a_dm2"), warm, TRANSFER)
    except ChemistryError:
        return None
    found = figure("Wagner number", "_ratio", wagner_number, slope=slope, conductivity=conductivity, length=size)
    if found.value is None:
        return found
    about = f"for a piece of about {show(size.m, '_mm', digits=0)}; {words}, slope by Tafel’s law."
    return _estimated(found, f"{_meaning(found.value)}, {about}")


def _meaning(wagner: float) -> str:
    if wagner < GEOMETRY:
        return "Geometry rules: edges grow thick, hollows stay thin"
    return "The reaction rules: the wall grows even" if wagner > REACTION else "Geometry and reaction share the rule"
