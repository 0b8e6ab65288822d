"""A run as one line of a list: standing, charge, efficiency; without workings, so that fifty are quick."""

from dataclasses import dataclass
from datetime import datetime

from process.chemistry.deposit import efficiency
from process.chemistry.errors import ChemistryError
from process.chemistry.plan import plan_deposit
from process.models import Run
from process.summaries.cathodes import gain_of
from process.summaries.charge import chosen_charge_ah
from process.summaries.evidence import quantity
from process.summaries.figures import apart
from process.summaries.planning import areas_of, metal_of
from process.summaries.sheet import Sheet, sheet_of
from process.summaries.standing import Standing, standing_of
from records.units import ureg


@dataclass(frozen=True)
class RunLine:
    run: Run
    standing: Standing
    started_at: datetime | None
    last_at: datetime | None
    charge_ah: float | None
    planned_ah: float | None
    efficiency_pct: float | None

    @property
    def cathodes(self) -> str:
        return ", ".join(cathode.label for cathode in self.run.cathodes.all())

    @property
    def percent(self) -> float | None:
        return self.charge_ah / self.planned_ah * 100 if self.planned_ah and self.charge_ah is not None else None


def line_of(run: Run) -> RunLine:
    """Give it a run from `Run.objects.with_sheet()`."""
    sheet = sheet_of(run)
    charge = chosen_charge_ah(run) if sheet.started_at else None
    return RunLine(
        run,
        standing_of(run, sheet),
        sheet.started_at,
        sheet.last_at,
        charge,
        _planned_ah(run),
        _efficiency_pct(run, sheet, charge),
    )


def _planned_ah(run: Run) -> float | None:
    metal, rail = metal_of(run), list(run.cathodes.all())
    if metal is None or not rail:
        return None
    areas = areas_of(rail)
    try:
        plan = plan_deposit(
            metal, area=sum(areas[1:], start=areas[0]), thickness=quantity(run, "planned_thickness_mm"),
            density=quantity(run, "planned_current_density_a_dm2"), efficiency=run.planned_efficiency_pct / 100,
        )  # fmt: skip
    except ChemistryError:
        return None
    return apart(plan.charge.m)[0]


def _efficiency_pct(run: Run, sheet: Sheet, charge_ah: float | None) -> float | None:
    metal, gains = metal_of(run), [gain_of(cathode) for cathode in run.cathodes.all()]
    if not (sheet.stopped_at and charge_ah and metal and gains) or any(g is None or apart(g.m)[0] <= 0 for g in gains):
        return None
    whole = sum(gains[1:], start=gains[0])
    return apart(efficiency(metal, whole, ureg.Quantity(charge_ah, "A*h")).m_as("pct"))[0]
