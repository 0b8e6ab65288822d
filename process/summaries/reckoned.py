"""A plan reckoned whole: figures, what stands behind them, and what the register says of it."""

from collections.abc import Sequence
from dataclasses import dataclass

from process.models import RampStep, Run
from process.summaries.plan_checks import PlanCheck, checks_of
from process.summaries.plan_details import PlanDetails, details_of
from process.summaries.planning import PlanSummary, plan_of
from records.units import show


@dataclass(frozen=True)
class Reckoned:
    run: Run
    plan: PlanSummary
    details: PlanDetails
    checks: tuple[PlanCheck, ...]

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


def reckon(run: Run, steps: Sequence[RampStep] | None = None) -> Reckoned | None:
    """None while nothing hangs on the rail; give it a run from `Run.objects.with_sheet()`."""
    cathodes = list(run.cathodes.all())
    plan = plan_of(run, cathodes, None, steps)
    if plan is None:
        return None
    details = details_of(run, cathodes, plan)
    return Reckoned(run, plan, details, checks_of(run, plan, details))
