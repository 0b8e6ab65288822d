"""What a run is planned to be: current, mass, charge, time and finish, from its cathodes and its targets."""

from dataclasses import dataclass
from datetime import UTC, datetime

from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.faraday import charge_for_mass, deposition_time
from process.chemistry.metals import Ion, ion
from process.chemistry.plan import bath_current, cathode_area, finish_instant, target_mass
from process.models import Cathode, Run
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from records.figures import Figure
from records.units import ureg

LONGEST_H = 10 * 365.25 * 24  # nobody waits longer; beyond it a finish is not worth a date


@dataclass(frozen=True)
class PlanSummary:
    """Every figure opens to its working; a plan that cannot be computed carries the reason in its notes."""

    area: Figure
    current: Figure
    mass: Figure
    charge: Figure
    time: Figure
    finish_at: datetime | None

    @property
    def figures(self) -> tuple[Figure, ...]:
        return self.area, self.current, self.mass, self.charge, self.time


def metal_of(run: Run) -> Ion | None:
    """The ion with the density that the run states; None where the kit does not know it."""
    try:
        return ion(run.ion, ureg.Quantity(run.deposit_density_g_cm3, "g/cm**3"))
    except ChemistryError:
        return None


def areas_of(cathodes: list[Cathode]) -> list[Quantity]:
    return [quantity(cathode, "total_area_dm2") for cathode in cathodes]


def plan_of(run: Run, cathodes: list[Cathode], started_at: datetime | None = None) -> PlanSummary | None:
    """The plan for what hangs on the rail; None while nothing does."""
    metal = metal_of(run)
    if not cathodes or metal is None:
        return None
    area = figure("Area in the bath", "_dm2", cathode_area, areas=areas_of(cathodes))
    whole = area.working.quantity
    current = figure(
        "Planned current",
        "_a",
        bath_current,
        current_density=quantity(run, "planned_current_density_a_dm2"),
        area=whole,
    )
    mass = figure(
        "Mass to deposit", "_g", target_mass, ion=metal, area=whole, thickness=quantity(run, "planned_thickness_mm")
    )
    charge, time = _charge_and_time(run, metal, mass, current)
    return PlanSummary(area, current, mass, charge, time, finish(started_at or run.planned_start_at, time.value))


def _charge_and_time(run: Run, metal: Ion, mass: Figure, current: Figure) -> tuple[Figure, Figure]:
    share = run.planned_efficiency_pct / 100
    if mass.working is None or current.working is None:
        return Figure("Planned charge", None, "_ah"), Figure("Planned time", None, "_h")
    charge = figure("Planned charge", "_ah", charge_for_mass, ion=metal, mass=mass.working.quantity, efficiency=share)
    if charge.working is None:
        return charge, Figure("Planned time", None, "_h")
    return charge, figure(
        "Planned time", "_h", deposition_time, charge=charge.working.quantity, current=current.working.quantity
    )


def finish(start: datetime | None, hours: float | None) -> datetime | None:
    """The instant so many hours after the start; None where there is no sensible one."""
    if start is None or hours is None or not 0 <= hours < LONGEST_H:
        return None
    return finish_instant(start.astimezone(UTC), ureg.Quantity(hours, "h"))
