"""All that stands behind a plan: the thinnest place, anodes, bath load, power unit, energy, gas and cost."""

from dataclasses import dataclass

from pint import Quantity

from process.chemistry.anodes import anode_need
from process.chemistry.gas import energy_used, hydrogen_volume
from process.chemistry.supply import anode_ratio, bath_load, resolution_share
from process.models import Cathode, Run
from process.summaries.costing import Costing, costing_of
from process.summaries.evenness import Evenness, evenness_of
from process.summaries.evidence import quantity
from process.summaries.figures import figure, quantity_of
from process.summaries.planning import PlanSummary
from process.summaries.voltage import Voltage, voltage_of, wagner_of
from records.figures import Figure
from records.units import ureg


@dataclass(frozen=True)
class PlanDetails:
    evenness: Evenness
    anode_need: Figure | None
    anode_ratio: Figure | None
    load: Figure | None
    resolution: Figure | None
    energy: Figure | None
    energy_from_wall: Figure | None
    hydrogen: Figure | None
    voltage: Voltage | None
    wagner: Figure | None
    costing: Costing | None

    @property
    def supply(self) -> tuple[Figure, ...]:
        """What the page shows in a row, as far as it could be reckoned."""
        volts = (self.voltage.drop, self.voltage.estimate) if self.voltage else ()
        found = (
            *volts,
            self.anode_need,
            self.anode_ratio,
            self.load,
            self.resolution,
            self.energy,
            self.energy_from_wall,
        )
        return tuple(each for each in (*found, self.hydrogen) if each is not None)


def details_of(run: Run, cathodes: list[Cathode], plan: PlanSummary) -> PlanDetails:
    voltage = voltage_of(run, plan)
    cell, wall = _energy(run, plan, voltage)
    return PlanDetails(
        evenness=evenness_of(run, cathodes),
        anode_need=_if(plan.mass, "Anode metal wanted", "_g", anode_need, "mass"),
        anode_ratio=_anode_ratio(run, plan), load=_load(run, plan), resolution=_resolution(run, plan),
        energy=cell, energy_from_wall=wall, hydrogen=_hydrogen(run, plan),
        voltage=voltage, wagner=wagner_of(run, cathodes),
        costing=costing_of(run, plan.mass, plan.charge, wall or cell),
    )  # fmt: skip


def _if(source: Figure, label: str, suffix: str, function, name: str) -> Figure | None:
    return figure(label, suffix, function, **{name: source.working.quantity}) if source.working else None


def _anode_ratio(run: Run, plan: PlanSummary) -> Figure | None:
    anodes = quantity(run, "anode_area_dm2")
    if not run.anode_area_dm2 or plan.area.working is None:
        return None
    return figure(
        "Anodes against cathodes, area", "_ratio", anode_ratio, anode_area=anodes, area=plan.area.working.quantity
    )


def highest_current(plan: PlanSummary) -> Quantity | None:
    """The largest current that any step asks for."""
    currents = [stage.stage.current for stage in plan.stages] or [quantity_of(plan.current)]
    return max((each for each in currents if each is not None), key=_amperes, default=None)


def smallest_current(plan: PlanSummary) -> Quantity | None:
    currents = [stage.stage.current for stage in plan.stages] or [quantity_of(plan.current)]
    return min((each for each in currents if each is not None), key=_amperes, default=None)


def _amperes(current: Quantity) -> float:
    magnitude = current.m_as("A")
    return float(getattr(magnitude, "nominal_value", magnitude))


def _load(run: Run, plan: PlanSummary) -> Figure | None:
    current = highest_current(plan)
    if current is None:
        return None
    return figure("Load of the bath", "_a_l", bath_load, current=current, volume=quantity(run.bath, "volume_l"))


def _resolution(run: Run, plan: PlanSummary) -> Figure | None:
    unit, current = run.power_unit, smallest_current(plan)
    if unit is None or not unit.resolution_a or current is None or _amperes(current) <= 0:
        return None
    return figure(
        "Step of the power unit", "_pct", resolution_share, resolution=quantity(unit, "resolution_a"), current=current
    )


def _energy(run: Run, plan: PlanSummary, estimated: Voltage | None) -> tuple[Figure | None, Figure | None]:
    """By the voltage that is expected; where nobody wrote one, by the estimate."""
    voltage = quantity(run, "planned_voltage_v")
    if voltage is None and estimated and estimated.estimate.working:
        voltage = estimated.estimate.working.quantity
    if voltage is None or plan.charge.working is None:
        return None, None
    known = {"voltage": voltage, "charge": plan.charge.working.quantity}
    cell = figure("Energy at the cell", "_kwh", energy_used, **known)
    if run.power_unit is None:
        return cell, None
    share = ureg.Quantity(run.power_unit.efficiency_pct / 100)
    return cell, figure("Energy from the wall", "_kwh", energy_used, rectifier_efficiency=share, **known)


def _hydrogen(run: Run, plan: PlanSummary) -> Figure | None:
    if plan.charge.working is None:
        return None
    found = figure(
        "Hydrogen, at the most", "_l", hydrogen_volume,
        charge=plan.charge.working.quantity, efficiency=run.planned_efficiency_pct / 100,
    )  # fmt: skip
    note = found.note or "If all that makes no metal makes gas; acid copper makes hardly any."
    return Figure(found.label, found.value, "_l", found.kind, found.plus_minus, note, None, found.working)
