"""The steps of a ramp laid end to end: when each begins, what it carries, and what should have passed at any hour."""

from collections.abc import Sequence
from dataclasses import dataclass

from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.faraday import charge_passed, deposition_time
from process.chemistry.plan import Step
from process.chemistry.terms import CHARGE, CURRENT, TIME, Rule, above
from records.units import ureg

BUILD = CURRENT.called("I", "current of the last step", Rule.POSITIVE)


@dataclass(frozen=True)
class Stage:
    """One step in its place: from which hour, how long, with which current, from which charge to which."""

    start: Quantity
    time: Quantity
    current: Quantity
    charge_before: Quantity
    charge: Quantity

    @property
    def end(self) -> Quantity:
        return self.start + self.time

    @property
    def charge_after(self) -> Quantity:
        return self.charge_before + self.charge


def stages_of(steps: Sequence[Step], build_current: Quantity, planned_charge: Quantity) -> tuple[Stage, ...]:
    """The steps of a ramp and, last, the current that stays until the planned charge has passed.

    Equation: Q [A·h] = I [A]·t [h] for each step; last t [h] = (Q₁ [A·h] − ΣQ [A·h]) / I [A]
    Errors: steps that alone exceed the planned charge; a negative current or time; a last current of zero or less.
    Source: definition of the ampere, step by step.

    >>> A, h = ureg.A, ureg.hour
    >>> stages = stages_of([Step(3 * A, 1 * h), Step(6 * A, 1 * h)], 10.3 * A, ureg.Quantity(163.406, "A*h"))
    >>> [round(stage.end.m_as("h"), 2) for stage in stages]
    [1.0, 2.0, 16.99]
    """
    CHARGE.check("planned_charge", planned_charge)
    BUILD.check("build_current", build_current)
    stages: list[Stage] = []
    hour, passed = ureg.Quantity(0.0, "h"), ureg.Quantity(0.0, "A*h")
    for step in steps:
        TIME.check("ramp time", step.time)
        charge = charge_passed(step.current, step.time)
        stages.append(Stage(hour, step.time.to("h"), step.current, passed, charge))
        hour, passed = hour + step.time.to("h"), passed + charge
    if above(passed, planned_charge):
        raise ChemistryError("ramp", "the steps alone exceed the planned charge; shorten the ramp")
    rest = planned_charge.to("A*h") - passed
    return (*stages, Stage(hour, deposition_time(rest, build_current), build_current, passed, rest))


def charge_after_hours(stages: Sequence[Stage], hours: float) -> Quantity:
    """Charge that should have passed so many hours after the start; the whole once the last step is over.

    Equation: Q [A·h] = ΣQ [A·h] of the steps that are over + I [A]·t [h] of the one that goes on
    Errors: no steps; hours below zero.
    Source: definition of the ampere, step by step.

    >>> A, h = ureg.A, ureg.hour
    >>> stages = stages_of([Step(2 * A, 1 * h)], 4 * A, ureg.Quantity(10, "A*h"))
    >>> [charge_after_hours(stages, hour).magnitude for hour in (0.5, 2, 99)]
    [1.0, 6.0, 10.0]
    """
    return _stage_at(stages, hours)[1]


def current_after_hours(stages: Sequence[Stage], hours: float) -> Quantity:
    """Current that should flow so many hours after the start; at a change the new one, nothing once all is over.

    Equation: I [A] of the step that goes on at t [h]
    Errors: no steps; hours below zero.
    Source: the plan.

    >>> A, h = ureg.A, ureg.hour
    >>> stages = stages_of([Step(2 * A, 1 * h)], 4 * A, ureg.Quantity(10, "A*h"))
    >>> [current_after_hours(stages, hour).magnitude for hour in (0.5, 1, 3)]
    [2, 4, 0.0]
    """
    return _stage_at(stages, hours)[0]


def _stage_at(stages: Sequence[Stage], hours: float) -> tuple[Quantity, Quantity]:
    if not stages or not hours >= 0:
        raise ChemistryError("hours", "give the hours since the start, zero or more, and at least one step")
    for stage in stages:
        if hours < _number(stage.end, "h"):
            since = ureg.Quantity(hours - _number(stage.start, "h"), "h")
            return stage.current, stage.charge_before + (stage.current * since).to("A*h")
    return ureg.Quantity(0.0, "A"), stages[-1].charge_after


def _number(quantity: Quantity, unit: str) -> float:
    magnitude = quantity.m_as(unit)
    return float(getattr(magnitude, "nominal_value", magnitude))
