"""What a run is planned to be: current, mass, charge, time and finish, from its cathodes and its targets."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from math import sqrt

from pint import Quantity
from uncertainties import ufloat

from process.chemistry.errors import ChemistryError
from process.chemistry.faraday import charge_for_mass
from process.chemistry.metals import Ion, ion
from process.chemistry.plan import cathode_area, finish_instant, target_mass
from process.models import Cathode, RampStep, Run
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from process.summaries.ramp import PlannedStage, build_density, dated, plan_time, stages_of_run
from records.figures import Figure
from records.units import ureg

# Half the width within which the efficiency of acid copper is taken to lie about the planned one; common practice, from
# memory. Anywhere within alike: one standard uncertainty is this over √3 (JCGM 100:2008, 4.3.7).
EFFICIENCY_WITHIN = 0.01
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
    stages: tuple[PlannedStage, ...] = ()

    @property
    def figures(self) -> tuple[Figure, ...]:
        return self.area, self.current, self.mass, self.charge, self.time


def metal_of(run: Run) -> Ion | None:
    """The ion with the density that the run states; None where the kit does not know it."""
    try:
        return ion(run.ion, ureg.Quantity(run.deposit_density_g_cm3, "g/cm**3"))
    except ChemistryError:
        return None


def taken_efficiency(planned: float) -> Quantity:
    """The efficiency that is taken where no balance can tell it, with its ±."""
    return ureg.Quantity(ufloat(min(planned, 1.0), EFFICIENCY_WITHIN / sqrt(3)), "")


def areas_of(cathodes: list[Cathode]) -> list[Quantity]:
    return [quantity(cathode, "total_area_dm2") for cathode in cathodes]


def plan_of(
    run: Run, cathodes: list[Cathode], started_at: datetime | None = None, steps: Sequence[RampStep] | None = None
) -> PlanSummary | None:
    """The plan for what hangs on the rail, with its own steps or those being tried; None while nothing does."""
    metal = metal_of(run)
    if not cathodes or metal is None:
        return None
    area = figure("Area in the bath", "_dm2", cathode_area, areas=areas_of(cathodes))
    if area.working is None:
        return None
    whole = area.working.quantity
    ramp = list(run.ramp_steps.all()) if steps is None else list(steps)
    current = build_density(run, ramp, whole)
    mass = figure(
        "Mass to deposit", "_g", target_mass, ion=metal, area=whole, thickness=quantity(run, "planned_thickness_mm")
    )
    charge = _charge(run, metal, mass)
    stages, reason = stages_of_run(run, ramp, whole, current, charge, metal)
    time = plan_time(stages, current, charge, reason)
    start = started_at or run.planned_start_at
    return PlanSummary(area, current, mass, charge, time, finish(start, time.value), dated(stages, start))


def _charge(run: Run, metal: Ion, mass: Figure) -> Figure:
    if mass.working is None:
        return Figure("Planned charge", None, "_ah")
    share = run.planned_efficiency_pct / 100
    return figure("Planned charge", "_ah", charge_for_mass, ion=metal, mass=mass.working.quantity, efficiency=share)


def finish(start: datetime | None, hours: float | None) -> datetime | None:
    """The instant so many hours after the start; None where there is no sensible one."""
    if start is None or hours is None or not 0 <= hours < LONGEST_H:
        return None
    return finish_instant(start.astimezone(UTC), ureg.Quantity(hours, "h"))
