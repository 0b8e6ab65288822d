"""Planning a deposit, from the disc on the bench to the hour it will be done."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from pint import Quantity

from process.chemistry.errors import ChemistryError
from process.chemistry.faraday import charge_for_mass
from process.chemistry.formula import formula
from process.chemistry.metals import Ion
from process.chemistry.terms import (
    AREA,
    CHARGE,
    CURRENT,
    CURRENT_DENSITY,
    ION,
    LENGTH,
    MASS,
    RATIO,
    THICKNESS,
    TIME,
    Rule,
    above,
)
from records.units import ureg

FULL_CURRENT = CURRENT.called("I", "full current", Rule.POSITIVE)
TARGET = THICKNESS.called("d", "target mean thickness", Rule.POSITIVE)


@formula(
    AREA,
    diameter=LENGTH.called("D", "diameter"),
    relief_factor=RATIO.called("f", "relief factor", Rule.POSITIVE),
)
def relief_disc_area(diameter: Quantity, relief_factor: float = 1.0) -> Quantity:
    """Area of one side of a medal or coin; relief adds 3 to 15 % on a medal, more on ornate work.

    Equation: A [dm²] = π·D² [mm]/4·f [1]
    Errors: a diameter or relief factor of zero or less.
    Source: area of a circle; relief factors are common practice, from memory.

    >>> round(relief_disc_area(58.4 * ureg.mm, 1.08).magnitude, 3)
    0.289
    """
    return math.pi * diameter**2 / 4 * relief_factor


@formula(AREA, areas=AREA.several("ΣA", "faces, flanges, wires and thieves"))
def cathode_area(areas: Sequence[Quantity]) -> Quantity:
    """Area of all that takes current on the rail.

    Equation: A [dm²] = ΣA [dm²]
    Errors: no area at all; an area of zero or less.
    Source: the parts of a whole.

    >>> cathode_area([ureg.Quantity(0.402, "dm**2"), ureg.Quantity(0.402, "dm**2")]).magnitude
    0.804
    """
    return sum(areas[1:], start=areas[0])


@formula(CURRENT, current_density=CURRENT_DENSITY, area=AREA.called("A", "cathode area"))
def bath_current(current_density: Quantity, area: Quantity) -> Quantity:
    """Current to set for a current density.

    Equation: I [A] = j [A/dm²]·A [dm²]
    Errors: negative current density; an area of zero or less.
    Source: definition of current density.

    >>> round(bath_current(ureg.Quantity(1.5, "A/dm**2"), ureg.Quantity(0.804, "dm**2")).magnitude, 3)
    1.206
    """
    return current_density * area


@formula(CURRENT_DENSITY, current=CURRENT, area=AREA.called("A", "cathode area"))
def current_density(current: Quantity, area: Quantity) -> Quantity:
    """Mean current density that a current makes on an area.

    Equation: j [A/dm²] = I [A] / A [dm²]
    Errors: negative current; an area of zero or less.
    Source: definition of current density.

    >>> round(current_density(ureg.Quantity(11.8, "A"), ureg.Quantity(0.804, "dm**2")).magnitude, 1)
    14.7
    """
    return current / area


@formula(MASS, "ρ", ion=ION, area=AREA, thickness=TARGET)
def target_mass(ion: Ion, area: Quantity, thickness: Quantity) -> Quantity:
    """Mass of metal that a mean thickness needs.

    Equation: m [g] = ρ [g/cm³]·A [dm²]·d [mm]
    Errors: an area or thickness of zero or less.
    Source: definition of density; OpenStax Chemistry 2e, section 17.7.

    >>> from process.chemistry.metals import ion
    >>> round(target_mass(ion("Cu2+"), ureg.Quantity(0.804, "dm**2"), 0.6 * ureg.mm).magnitude, 2)
    43.03
    """
    return ion.density * area * thickness


@formula(
    TIME.called("t", "time with ramp"),
    charge=CHARGE.called("Q", "planned charge"),
    current=FULL_CURRENT,
    ramp_time=TIME.called("t₁", "time of the ramp"),
    ramp_charge=CHARGE.called("Q₁", "charge of the ramp"),
)
def time_with_ramp(charge: Quantity, current: Quantity, ramp_time: Quantity, ramp_charge: Quantity) -> Quantity:
    """Time for a charge when the current is raised in steps first.

    Equation: t [h] = t₁ [h] + (Q [A·h] − Q₁ [A·h]) / I [A]
    Errors: a ramp that already exceeds the planned charge; a full current of zero or less.
    Source: definition of the ampere, step by step.

    >>> ramp_h, ramp_ah = ureg.Quantity(4, "h"), ureg.Quantity(1.76, "A*h")
    >>> round(time_with_ramp(ureg.Quantity(36.85, "A*h"), ureg.Quantity(1.21, "A"), ramp_h, ramp_ah).m, 1)
    33.0
    """
    if above(ramp_charge, charge):
        raise ChemistryError("ramp", "the steps alone exceed the planned charge; shorten the ramp")
    return ramp_time + (charge - ramp_charge) / current


@formula(
    TIME.called("t", "time still to run"),
    planned_charge=CHARGE.called("Q₁", "planned charge"),
    charge=CHARGE.called("Q", "charge so far"),
    current=CURRENT.called("I", "current now", Rule.POSITIVE),
)
def remaining_time(planned_charge: Quantity, charge: Quantity, current: Quantity) -> Quantity:
    """Time until the planned charge has passed; negative once it is exceeded.

    Equation: t [h] = (Q₁ [A·h] − Q [A·h]) / I [A]
    Errors: a current of zero or less, for then the run never ends.
    Source: definition of the ampere.

    >>> so_far, planned = ureg.Quantity(24.75, "A*h"), ureg.Quantity(36.85, "A*h")
    >>> round(remaining_time(planned, so_far, ureg.Quantity(1.21, "A")).magnitude, 6)
    10.0
    """
    return (planned_charge - charge) / current


def finish_instant(start: datetime, duration: Quantity) -> datetime:
    """Instant at which a run that starts then and takes so long will end, in UTC.

    Equation: finish = start + t [h]
    Errors: a start without time zone, since a wall clock may jump; a negative duration.
    Source: elapsed time is the difference of instants; ISO 8601-1, time shift from UTC.

    >>> finish_instant(datetime(2026, 3, 28, 17, 0, tzinfo=UTC), ureg.Quantity(17, "h")).isoformat()
    '2026-03-29T10:00:00+00:00'
    """
    if start.tzinfo is None:
        raise ChemistryError("start", "has no time zone; give the instant with its offset from UTC")
    TIME.check("duration", duration)
    seconds = duration.m_as("s")
    return start.astimezone(UTC) + timedelta(seconds=float(getattr(seconds, "nominal_value", seconds)))


@dataclass(frozen=True)
class Step:
    """One step of a ramp: this current for this long."""

    current: Quantity
    time: Quantity


@dataclass(frozen=True)
class Plan:
    """A deposit as planned."""

    current: Quantity
    mass: Quantity
    charge: Quantity
    ramp_time: Quantity
    ramp_charge: Quantity
    time: Quantity

    def finish(self, start: datetime) -> datetime:
        return finish_instant(start, self.time)


def plan_deposit(
    ion: Ion,
    *,
    area: Quantity,
    thickness: Quantity,
    density: Quantity,
    efficiency: Quantity | float,
    ramp: Sequence[Step] = (),
) -> Plan:
    """The whole plan for a rail, P3 to P6 in one go.

    Equation: I [A] = j [A/dm²]·A [dm²]; m [g] = ρ·A·d; Q [A·h] = m/(k·η); t [h] = Σt + (Q − ΣI·t)/I
    Errors: those of the formulas it calls; a current density of zero.
    Source: bath_current, target_mass, charge_for_mass and time_with_ramp.

    >>> from process.chemistry.metals import ion
    >>> area, density = ureg.Quantity(0.804, "dm**2"), ureg.Quantity(1.5, "A/dm**2")
    >>> plan = plan_deposit(
    ...     ion("Cu2+"), area=area, thickness=0.6 * ureg.mm, density=density, efficiency=0.985
    ... )
    >>> f"{plan.charge:.2f~P}", f"{plan.time:.2f~P}"
    ('36.85 A·h', '30.56 h')
    """
    current = bath_current(density, area)
    mass = target_mass(ion, area, thickness)
    charge = charge_for_mass(ion, mass, efficiency)
    for step in ramp:
        CURRENT.check("ramp current", step.current)
        TIME.check("ramp time", step.time)
    ramp_time = sum((step.time for step in ramp), start=ureg.Quantity(0.0, "h"))
    ramp_charge = sum((step.current * step.time for step in ramp), start=ureg.Quantity(0.0, "A*h"))
    time = time_with_ramp(charge, current, ramp_time, ramp_charge)
    return Plan(current, mass, charge, ramp_time, ramp_charge, time)
