"""A run as pages and papers show it: everything that follows from its rows, with the working of each figure."""

from dataclasses import dataclass, replace
from functools import cached_property

from django.utils import timezone

from process.chemistry.gas import hydrogen_volume
from process.models import Run
from process.summaries.boundaries import Wall
from process.summaries.cathodes import CathodeSummary, cathodes_of
from process.summaries.charges import Charge, charge_of
from process.summaries.drying import Drying, dryings_of, shares_on, weighings_of
from process.summaries.figures import figure
from process.summaries.interruptions import Interruption, interruptions_of
from process.summaries.pieces import wanted_ah
from process.summaries.planning import PlanSummary, metal_of, plan_of
from process.summaries.prospect import Prospect, prospect_of
from process.summaries.results import Result, result_of, theory_of
from process.summaries.segments import Rail, rail_of
from process.summaries.sheet import Line, Sheet, sheet_of
from process.summaries.standing import Standing, standing_of
from process.summaries.stretches import stretches_in
from process.summaries.traces import Coverage, accepted, coverage_of
from records.figures import Figure
from records.units import show

HYDROGEN = (
    "At 20 °C, if all the charge that made no metal made gas; in acid copper far less. It burns: no flame or spark at "
    "the bath, extraction on. Local rules and a person who may judge it decide on ventilation."
)


@dataclass(frozen=True)
class RunSummary:
    """Frozen at one instant: `sheet.until_at`."""

    run: Run
    standing: Standing
    sheet: Sheet
    plan: PlanSummary | None
    charge: Charge
    theory: Figure | None
    result: Result | None
    cathodes: tuple[CathodeSummary, ...]
    rail: Rail
    interruptions: tuple[Interruption, ...]
    prospect: Prospect | None

    @cached_property
    def dryings(self) -> tuple[Drying, ...]:
        """Of the skinned cores on its rail; asked of the database only where they are shown."""
        charge = self.charge.quantity
        shares = shares_on(self.rail, charge)
        return tuple(dryings_of(list(self.run.cathodes.all()), charge, metal_of(self.run), shares=shares))

    @property
    def coverage(self) -> Coverage | None:
        """How much of the run its accepted traces saw."""
        return coverage_of(self.run, self.sheet.started_at, self.sheet.until_at)

    @property
    def elapsed(self) -> Figure:
        return Figure("Time elapsed", self.sheet.charge.elapsed_h, "_h", "measured", note="A difference of instants.")

    @property
    def energised(self) -> Figure:
        return Figure("Time with current", self.sheet.charge.energised_h, "_h", "measured")

    @property
    def thickness(self) -> Figure | None:
        """Mean thickness of the thinnest cathode: what the run is waited for."""
        here = [each for each in self.cathodes if each.taken_out_at is None] or self.cathodes
        known = [each.thickness for each in here if each.thickness.value is not None]
        return min(known, key=lambda figure: figure.value, default=None)

    @property
    def percent(self) -> float | None:
        """Charge delivered in percent of the plan."""
        planned = self.charge.chosen.target
        return self.charge.chosen.value / planned * 100 if planned and self.charge.chosen.value is not None else None

    @property
    def hydrogen(self) -> Figure | None:
        """From the charge that made no metal, once the balance says how much that was."""
        found = self.result.efficiency if self.result else None
        if found is None or found.working is None or not 0 <= found.value < 100:
            return None
        known = figure("Hydrogen, at the most", "_l", hydrogen_volume,
                       charge=self.charge.quantity, efficiency=found.working.quantity)  # fmt: skip
        return replace(known, note=HYDROGEN)

    @property
    def stop_words(self) -> str:
        elapsed, energised = self.sheet.charge.elapsed_h, self.sheet.charge.energised_h
        return f"after {show(elapsed, '_h')}, {show(energised, '_h')} of them with current"

    @property
    def finish_words(self) -> str:
        """What the plan said of the finish."""
        at = self.plan.finish_at if self.plan else None
        return f"planned for {timezone.localtime(at):%-d %b, %H:%M}" if at else ""

    @property
    def drifts(self) -> tuple[Line, ...]:
        return tuple(line for line in self.sheet.lines if line.drifted)


def summarise(run: Run) -> RunSummary:
    """Everything that follows from a run's rows by now; give it a run from `Run.objects.with_sheet()`."""
    hung = list(run.cathodes.all())
    sheet, metal = sheet_of(run), metal_of(run)
    rail = rail_of(sheet, hung)
    plan = plan_of(run, rail.first, sheet.started_at)
    charge = charge_of(run, sheet, wanted_ah(run, rail, plan, metal))
    cathodes = cathodes_of(run, rail, charge.quantity, metal)
    pieces = [each.remaining for each in cathodes if each.remaining]
    return RunSummary(
        run=run, standing=standing_of(run, sheet), sheet=sheet, plan=plan, charge=charge,
        theory=theory_of(metal, charge.quantity),
        result=result_of(hung, charge.quantity, metal, lambda: weighings_of(hung)), cathodes=cathodes,
        rail=rail, interruptions=_interruptions(run, rail, cathodes, charge),
        prospect=prospect_of(run, sheet, plan, charge.quantity, pieces),
    )  # fmt: skip


def _interruptions(
    run: Run, rail: Rail, cathodes: tuple[CathodeSummary, ...], charge: Charge
) -> tuple[Interruption, ...]:
    """Their depth follows the evidence that was chosen for the charge."""
    traced_ah = charge.chosen.value if charge.chosen is charge.trace else None
    return interruptions_of(run, rail, _walls(cathodes), stretches_in(accepted(run)), traced_ah)


def _walls(cathodes: tuple[CathodeSummary, ...]) -> list[Wall]:
    """What grew, as far as it is known."""
    return [
        Wall(index, each.cathode.label, each.thickness.working.quantity,
             each.face.working.quantity if each.face and each.face.working else None, each.shell)
        for index, each in enumerate(cathodes) if each.thickness.working
    ]  # fmt: skip
