"""What a copy has cost: hours of people, metal, energy, its share of the bath, bills."""

from collections.abc import Iterable
from dataclasses import dataclass

from process.chemistry.costs import bath_share, cost_of_copy, energy_cost, labour_cost, metal_cost
from process.models import Expense, MakingUp, PriceList, Run, WorkHours
from process.summaries.drying import TAKEN_AT
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from process.summaries.runs import RunSummary, summarise
from process.summaries.work_energy import energy_of
from records.figures import Figure
from records.models import Item
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
    hours = list(WorkHours.objects.filter(copy=copy).select_related("person"))
    bills = list(Expense.objects.filter(copy=copy).select_related("paid_to"))
    making = MakingUp.objects.filter(pk=copy.pk).first()
    shells = set(making.shells.values_list("pk", flat=True)) if making else set()
    runs = Run.objects.with_sheet().filter(cathodes__shell__in=shells).distinct() if shells else []
    grown = [part for run in runs for part in grown_in(summarise(run), shells)]
    return reckon(hours, bills, grown)


def grown_in(summary: RunSummary, shells: set[int] | None = None) -> Iterable[Grown]:
    """One entry for each run: what its cathodes took for these shells, or for all where none are named."""
    energy = energy_of(summary)
    total = summary.charge.chosen.value or 0.0
    mine = [each for each in summary.cathodes if each.shell and (shells is None or each.shell.pk in shells)]
    charge = sum(each.share.value or 0.0 for each in mine)
    if not mine:
        return
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


def reckon(hours: list[WorkHours], bills: list[Expense], grown: list[Grown]) -> Costs:
    """In money, by the price list that held when the last of it was done."""
    prices = _prices_for(hours, grown)
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


def _prices_for(hours: list[WorkHours], grown: list[Grown]) -> PriceList | None:
    rows = list(PriceList.objects.filter(ion=grown[0].run.ion) if grown else PriceList.objects.all())
    last = max((row.done_on for row in hours), default=None)
    return next((row for row in rows if last is None or row.valid_from <= last), rows[-1] if rows else None)


def _lacking(hours: list[WorkHours], grown: list[Grown]) -> list[str]:
    lacking = [] if hours else ["No hours are written down."]
    unread = [part.run.number for part in grown if not part.energy_kwh]
    return lacking + ([f"No voltage was read in {', '.join(unread)}: its energy is not counted."] if unread else [])
