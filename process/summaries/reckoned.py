"""A plan reckoned whole: figures, what stands behind them, and what the register says of it."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from process.chemistry.supply import density_for_time
from process.models import RampStep, Run
from process.ranges import judge
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from process.summaries.plan_checks import PlanCheck, checks_of
from process.summaries.plan_details import PlanDetails, details_of
from process.summaries.planning import PlanSummary, metal_of, plan_of
from records.figures import Figure
from records.units import other_unit, show, ureg


@dataclass(frozen=True)
class Reckoned:
    run: Run
    plan: PlanSummary
    details: PlanDetails
    checks: tuple[PlanCheck, ...]
    in_time: Figure | None = None

    @property
    def sentence(self) -> str:
        plan = self.plan
        if plan.time.value is None or plan.charge.value is None or plan.current.value is None:
            return "It cannot be reckoned yet."
        steps, current = len(plan.stages), show(plan.current.value, "_a")
        charge, time = show(plan.charge.value, "_ah"), show(plan.time.value, "_h")
        return (
            f"{charge} at {current} at the end: {time} in {steps} steps."
            if steps > 1
            else (f"{charge} at {current}: {time}.")
        )


def reckon(run: Run, steps: Sequence[RampStep] | None = None, ready_in_h: float | None = None) -> Reckoned | None:
    """None while nothing hangs on the rail; give it a run from `Run.objects.with_sheet()`.

    `ready_in_h` asks which density it would take to be ready in that time.
    """
    cathodes = list(run.cathodes.all())
    plan = plan_of(run, cathodes, None, steps)
    if plan is None:
        return None
    details = details_of(run, cathodes, plan)
    found = _in_time(run, ready_in_h) if ready_in_h else None
    return Reckoned(run, plan, details, (*_in_time_check(run, found), *checks_of(run, plan, details)), found)


def _in_time(run: Run, hours: float) -> Figure | None:
    metal = metal_of(run)
    if metal is None:
        return None
    found = figure(
        "Density to be ready in time", "_a_dm2", density_for_time, ion=metal,
        thickness=quantity(run, "planned_thickness_mm"), time=ureg.Quantity(hours, "h"),
        efficiency=run.planned_efficiency_pct / 100,
    )  # fmt: skip
    return found if found.value is None else replace(found, note=f"In {show(hours, '_h')} at one density, no ramp.")


def _in_time_check(run: Run, found: Figure | None) -> tuple[PlanCheck, ...]:
    """Whether the bath bears it."""
    if found is None or found.value is None:
        return ()
    said = judge("current_density_a_dm2", found.value, step=run.agitation, number=float(f"{found.value:.3g}"),
                 unit="A/dm²")  # fmt: skip
    both = f"To be ready in time takes {show(found.value, '_a_dm2')} ({other_unit(found.value, '_a_dm2')})."
    state = {"usual": "done", "impossible": "blocked"}.get(said.verdict, "look")
    return (PlanCheck(state, both if said.is_usual else f"{both} {said.sentence}"),)
