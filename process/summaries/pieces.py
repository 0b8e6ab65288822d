"""What each piece still needs on a rail that changed: its own charge, its own share of the current, its own finish."""

from datetime import datetime

from pint import Quantity

from process.chemistry.faraday import charge_for_mass
from process.chemistry.metals import Ion
from process.chemistry.plan import bath_current, current_density, remaining_time, target_mass
from process.models import Cathode, Run
from process.summaries.evidence import quantity
from process.summaries.figures import apart, figure
from process.summaries.hanging import hanging_at
from process.summaries.planning import PlanSummary
from process.summaries.segments import Rail
from records.figures import Figure
from records.units import ureg


def still_to_run(run: Run, rail: Rail, metal: Ion | None, charge: Quantity) -> dict[int, Figure]:
    """For each piece that hangs there now, by its key: the hours until its target is reached at the present current."""
    sheet = rail.sheet
    if not rail.changed or metal is None or not sheet.is_running or sheet.current_a <= 0:
        return {}
    now = on_the_rail(rail, sheet.until_at)
    density = current_density(ureg.Quantity(sheet.current_a, "A"), _area(now))
    return {
        cathode.pk: _remaining(run, metal, cathode, density, share.working.quantity)
        for index, cathode in enumerate(rail.cathodes)
        if cathode in now and (share := rail.share(index, charge)).working
    }


def wanted_ah(run: Run, rail: Rail, plan: PlanSummary | None, metal: Ion | None) -> float | None:
    """The charge that the whole rail is to have: as planned, and where it changed what each piece was to get or got."""
    if plan is None or metal is None or not rail.changed:
        return plan.charge.value if plan else None
    wanted = [apart(_wanted(run, metal, cathode).m_as("A*h"))[0] for cathode in rail.cathodes]
    ends = [end for _, end in rail.stays]
    had = [rail.passed_ah(index, end) if end < rail.sheet.until_at else full
           for index, (end, full) in enumerate(zip(ends, wanted, strict=True))]  # fmt: skip
    return sum(map(min, wanted, had))


def on_the_rail(rail: Rail, at: datetime) -> list[Cathode]:
    return hanging_at(rail.cathodes, [line.row for line in rail.sheet.lines if line.is_event], at)


def _area(cathodes: list[Cathode]) -> Quantity:
    areas = [quantity(cathode, "total_area_dm2") for cathode in cathodes]
    return sum(areas[1:], start=areas[0])


def _remaining(run: Run, metal: Ion, cathode: Cathode, density: Quantity, had: Quantity) -> Figure:
    return figure(
        f"Still to run, {cathode.label}", "_h", remaining_time, planned_charge=_wanted(run, metal, cathode),
        charge=had, current=bath_current(density, quantity(cathode, "total_area_dm2")),
    )  # fmt: skip


def _wanted(run: Run, metal: Ion, cathode: Cathode) -> Quantity:
    """The charge that brings this piece to the target."""
    mass = target_mass(metal, quantity(cathode, "total_area_dm2"), quantity(run, "planned_thickness_mm"))
    return charge_for_mass(metal, mass, run.planned_efficiency_pct / 100)
