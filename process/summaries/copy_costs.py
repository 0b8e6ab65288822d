"""What a copy has cost: hours of people, metal, energy, its share of the bath, bills."""

from collections.abc import Iterable
from dataclasses import dataclass

from django.db.models import Q

from process.chemistry.costs import bath_share, cost_of_copy, energy_cost, labour_cost, metal_cost
from process.models import Expense, PriceList, Run, WorkHours
from process.summaries.drying import TAKEN_AT
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from process.summaries.runs import RunSummary, summarise
from process.summaries.work_energy import energy_of
from records.figures import Figure
from records.models import Commission, Item
from records.units import ureg

NO_PRICES = "No price list is entered: the hours and masses stand, the money does not."


@dataclass(frozen=True)
class Grown:
    """The part of a run that went into a copy, or was lost in it."""

    run: Run
    mass_g: float
    charge_ah: float
    energy_kwh: float


@dataclass(frozen=True)
class Costs:
    """`parts` are figures with their working; `total` their sum, with bills; `lacking` what is not counted."""

    hours: list[WorkHours]
    bills: list[Expense]
    grown: list[Grown]
    prices: PriceList | None
    parts: tuple[Figure, ...]
    total: Figure | None
    lacking: list[str]

    @property
    def hours_h(self) -> float:
        return sum(row.work_h for row in self.hours)

    @property
    def rework_h(self) -> float:
        return sum(row.work_h for row in self.hours if row.is_rework)

    @property
    def mass_g(self) -> float:
        return sum(part.mass_g for part in self.grown)

    @property
    def energy_kwh(self) -> float:
        return sum(part.energy_kwh for part in self.grown)

    @property
    def bills_money(self) -> float:
        return sum(row.sum_money for row in self.bills)


def costs_of_copy(copy: Item) -> Costs:
    return costs_of([copy])[copy.pk]


def costs_of(copies: list[Item], whole: Commission | None = None) -> dict[int | None, Costs]:
    """By copy, with as few questions as for one; under None what belongs to no single copy of the commission."""
    mine = Q(copy__in=copies)
    grew = Q(cathodes__shell__making_up__copy__in=copies)
    if whole is not None:
        mine |= Q(copy=None, commission=whole)
        grew |= Q(commission=whole, outcome=Run.Outcome.FAILED)
    hours = list(WorkHours.objects.filter(mine).select_related("person"))
    bills = list(Expense.objects.filter(mine).select_related("paid_to"))
    runs = [summarise(run) for run in Run.objects.with_sheet(points=False).filter(grew).distinct()]
    prices = list(PriceList.objects.all())
    keys = [*(copy.pk for copy in copies), *([None] if whole is not None else [])]
    return {
        key: reckon(
            [row for row in hours if row.copy_id == key], [row for row in bills if row.copy_id == key],
            [part for run in runs for part in grown_in(run, key)], prices,
        )
        for key in keys
    }  # fmt: skip


def grown_in(summary: RunSummary, copy_pk: int | None) -> Iterable[Grown]:
    """What the run took for the shells of a copy; what failed took all for none."""
    failed = summary.run.outcome == Run.Outcome.FAILED
    if copy_pk is None and not failed:
        return
    mine = [each for each in summary.cathodes if each.shell and each.shell.making_up_id == copy_pk]
    if not mine:
        return
    energy, total = energy_of(summary), summary.charge.chosen.value or 0.0
    charge = sum(each.share.value or 0.0 for each in mine)
    used = (energy.value if energy else 0.0) * (charge / total if total else 0.0)
    yield Grown(summary.run, sum(_mass_of(each, summary) for each in mine), charge, used)


def _mass_of(each, summary: RunSummary) -> float:
    """As weighed; on a core, which drinks, as the charge deposits it."""
    if each.gain is not None and each.gain.value is not None and not each.cathode.core_id:
        return each.gain.value
    theory, total = summary.theory, summary.charge.chosen.value
    if theory is None or theory.value is None or not total:
        return 0.0
    return theory.value * TAKEN_AT * (each.share.value or 0.0) / total


def reckon(hours: list[WorkHours], bills: list[Expense], grown: list[Grown], lists: list[PriceList]) -> Costs:
    """In money, by the price list that held when the last of it was done."""
    prices = _prices_for(hours, grown, lists)
    if prices is None:
        return Costs(hours, bills, grown, None, (), None, [NO_PRICES])
    mass, charge, energy = (sum(getattr(g, name) for g in grown) for name in ("mass_g", "charge_ah", "energy_kwh"))
    worked = sum(row.work_h for row in hours)
    Q = ureg.Quantity
    parts = (
        figure("Labour", "_money", labour_cost, time=Q(worked, "h"), rate=quantity(prices, "labour_money_h")),
        figure("Metal", "_money", metal_cost, mass=Q(mass, "g"), price=quantity(prices, "metal_money_kg")),
        figure("Energy", "_money", energy_cost, energy=Q(energy, "kWh"), price=quantity(prices, "energy_money_kwh")),
        figure("Share of the bath", "_money", bath_share, charge=Q(charge, "A*h"),
               bath_cost=quantity(prices, "bath_money"), life=quantity(prices, "bath_life_ah")),
    )  # fmt: skip
    known = [part.working.quantity for part in parts if part.working]
    known.append(Q(float(sum(row.sum_money for row in bills)), "money"))
    return Costs(hours, bills, grown, prices, parts, figure("Together", "_money", cost_of_copy, parts=known),
                 _lacking(hours, grown))  # fmt: skip


def _prices_for(hours: list[WorkHours], grown: list[Grown], lists: list[PriceList]) -> PriceList | None:
    rows = [row for row in lists if not grown or row.ion == grown[0].run.ion]
    last = max((row.done_on for row in hours), default=None)
    return next((row for row in rows if last is None or row.valid_from <= last), rows[-1] if rows else None)


def _lacking(hours: list[WorkHours], grown: list[Grown]) -> list[str]:
    lacking = [] if hours else ["No hours are written down."]
    unread = [part.run.number for part in grown if not part.energy_kwh]
    return lacking + ([f"No voltage was read in {', '.join(unread)}: its energy is not counted."] if unread else [])
