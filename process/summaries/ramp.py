"""The steps of a planned ramp as figures: current, time and charge of each, and how thick the wall is after it."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from functools import cached_property

from pint import Quantity

from process.chemistry.deposit import grown_thickness
from process.chemistry.errors import ChemistryError
from process.chemistry.faraday import charge_passed, deposition_time
from process.chemistry.metals import Ion
from process.chemistry.plan import Step, bath_current, current_density, time_with_ramp
from process.chemistry.ramp import Stage, stages_of
from process.models import RampStep, Run
from process.summaries.evidence import quantity
from process.summaries.figures import apart, figure, quantity_of
from records.figures import Figure
from records.units import ureg

BUILD = "build, until the charge is reached"


@dataclass(frozen=True)
class PlannedStage:
    """One step in its place; its figures are reckoned where they are shown."""

    stage: Stage
    words: str
    area: Quantity
    metal: Ion
    share: float
    is_last: bool
    begins_at: datetime | None = None

    @cached_property
    def density(self) -> Figure:
        return figure("Density", "_a_dm2", current_density, current=self.stage.current, area=self.area)

    @cached_property
    def current(self) -> Figure:
        amperes, spread = apart(self.stage.current.m_as("A"))
        return Figure("Current", amperes, "_a", "calculated", spread)

    @cached_property
    def time(self) -> Figure:
        if self.is_last:
            return figure("Time", "_h", deposition_time, charge=self.stage.charge, current=self.stage.current)
        hours, spread = apart(self.stage.time.m_as("h"))
        return Figure("Time", hours, "_h", "", spread)

    @cached_property
    def charge(self) -> Figure:
        return figure("Charge", "_ah", charge_passed, current=self.stage.current, time=self.stage.time)

    @cached_property
    def after(self) -> Figure:
        """Mean thickness when it is over."""
        return figure(
            "Mean after it", "_mm", grown_thickness,
            ion=self.metal, charge=self.stage.charge_after, area=self.area, efficiency=self.share,
        )  # fmt: skip

    @property
    def begins_h(self) -> float:
        return apart(self.stage.start.m_as("h"))[0]


def dated(stages: Sequence[PlannedStage], start: datetime | None) -> tuple[PlannedStage, ...]:
    """The steps with the instants at which they begin; elapsed hours, so that no clock change adds one."""
    if start is None:
        return tuple(stages)
    return tuple(replace(stage, begins_at=start + timedelta(hours=stage.begins_h)) for stage in stages)


def is_timed(step: RampStep) -> bool:
    """A step without a time goes on until the charge is reached."""
    return bool(step.time_h)


def build_density(run: Run, ramp: Sequence[RampStep], area: Quantity) -> Figure:
    """Current of the last step: its own, or that of the planned density on the whole area."""
    last = ramp[-1] if ramp and not is_timed(ramp[-1]) else None
    if last is not None and last.current_a is not None:
        spread, note = last.plus_minus("current_a"), "As the last step of the ramp says."
        return Figure("Planned current", last.current_a, "_a", "", spread, note)
    row, field = (last, "current_density_a_dm2") if last else (run, "planned_current_density_a_dm2")
    return figure("Planned current", "_a", bath_current, current_density=quantity(row, field), area=area)


def stages_of_run(
    run: Run, ramp: Sequence[RampStep], area: Quantity, current: Figure, charge: Figure, metal: Ion
) -> tuple[tuple[PlannedStage, ...], str]:
    """Every step in its place, or none and the reason why it cannot be."""
    build = quantity_of(current)
    if build is None or charge.working is None:
        return (), current.note or charge.note
    timed = [step for step in ramp if is_timed(step)]
    try:
        stages = stages_of([_step(each, area) for each in timed], build, charge.working.quantity)
    except ChemistryError as error:
        return (), f"Not computed: {error}."
    last = next((each.words for each in ramp if not is_timed(each)), "")
    words = [*(each.words for each in timed), last or BUILD]
    share = run.planned_efficiency_pct / 100
    pairs = zip(stages, words, strict=True)
    return tuple(PlannedStage(s, w, area, metal, share, s is stages[-1]) for s, w in pairs), ""


def _step(row: RampStep, area: Quantity) -> Step:
    density = quantity(row, "current_density_a_dm2")
    current = quantity(row, "current_a") if density is None else bath_current(density, area)
    return Step(current, ureg.Quantity(row.time_h, "h"))


def plan_time(stages: Sequence[PlannedStage], current: Figure, charge: Figure, reason: str) -> Figure:
    """The whole time, ramp and all."""
    if not stages:
        return Figure("Planned time", None, "_h", note=reason)
    full = quantity_of(current)
    if len(stages) == 1:
        return figure("Planned time", "_h", deposition_time, charge=charge.working.quantity, current=full)
    last = stages[-1].stage
    return figure(
        "Planned time", "_h", time_with_ramp,
        charge=charge.working.quantity, current=full, ramp_time=last.start, ramp_charge=last.charge_before,
    )  # fmt: skip
