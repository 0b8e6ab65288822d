"""What a run is expected to cost, part by part, from the prices that hold."""

from collections.abc import Sequence
from dataclasses import dataclass

from django.utils import timezone
from pint import Quantity

from process.chemistry.costs import (
    bath_share,
    cost_of_run,
    energy_cost,
    expected_attempts,
    labour_cost,
    metal_cost,
)
from process.models import PriceList, Run
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from records import clock
from records.figures import Figure
from records.units import ureg


@dataclass(frozen=True)
class Costing:
    prices: PriceList
    parts: tuple[Figure, ...]
    attempts: Figure
    total: Figure
    lacking: str


def prices_for(run: Run, lists: Sequence[PriceList] | None = None) -> PriceList | None:
    """The youngest list for the metal that held when the run was to start."""
    day = timezone.localdate(run.planned_start_at) if run.planned_start_at else clock.today()
    rows = list(PriceList.objects.filter(ion=run.ion)) if lists is None else lists
    return next((each for each in rows if each.valid_from <= day), rows[-1] if rows else None)


def costing_of(run: Run, mass: Figure, charge: Figure, energy: Figure | None) -> Costing | None:
    """None without prices or without a plan."""
    prices = prices_for(run)
    if prices is None or mass.working is None or charge.working is None:
        return None
    attended = quantity(run, "attended_h") or ureg.Quantity(0.0, "h")
    used = energy.working.quantity if energy and energy.working else ureg.Quantity(0.0, "kWh")
    parts = (
        figure("Labour", "_money", labour_cost, time=attended, rate=quantity(prices, "labour_money_h")),
        figure("Metal", "_money", metal_cost, mass=mass.working.quantity, price=quantity(prices, "metal_money_kg")),
        figure("Energy", "_money", energy_cost, energy=used, price=quantity(prices, "energy_money_kwh")),
        figure("Share of the bath", "_money", bath_share, charge=charge.working.quantity,
               bath_cost=quantity(prices, "bath_money"), life=quantity(prices, "bath_life_ah")),
    )  # fmt: skip
    attempts = figure(
        "Attempts to be expected", "_ratio", expected_attempts, failure=ureg.Quantity(prices.failure_pct / 100)
    )
    outside = quantity(run, "outside_money") or ureg.Quantity(0.0, "money")
    return Costing(prices, parts, attempts, _total(parts, attempts, outside), _lacking(run, energy))


def _total(parts: Sequence[Figure], attempts: Figure, outside: Quantity) -> Figure:
    if attempts.working is None or any(each.working is None for each in parts):
        return Figure("Until one succeeds", None, "_money", note=attempts.note)
    known = [each.working.quantity for each in parts]
    return figure(
        "Until one succeeds", "_money", cost_of_run, parts=known, attempts=attempts.working.quantity, outside=outside
    )


def _lacking(run: Run, energy: Figure | None) -> str:
    """What the sum leaves out because the plan does not say it."""
    without = [] if run.attended_h else ["hours attended"]
    without += [] if energy and energy.working else ["energy (no cell voltage is stated)"]
    return f"Left out, for the plan does not say it: {', '.join(without)}." if without else ""
