"""What a commission has cost: its copies, what failed on the way, and how the hours stand against the estimate."""

from dataclasses import dataclass

from process.models import WorkEstimate, WorkHours, WorkKind
from process.summaries.copy_costs import Costs, costs_of
from records.models import Commission, Item


@dataclass(frozen=True)
class KindLine:
    """Hours of one kind: estimated, worked, and how much of that was done again."""

    label: str
    estimate: WorkEstimate | None
    worked_h: float
    rework_h: float

    @property
    def over_h(self) -> float | None:
        return None if self.estimate is None else self.worked_h - self.estimate.work_h


@dataclass(frozen=True)
class CommissionCosts:
    copies: list[tuple[Item, Costs]]
    rest: Costs
    kinds: list[KindLine]
    people: list[tuple[str, str, float]]

    @property
    def all_costs(self) -> list[Costs]:
        return [costs for _, costs in self.copies] + [self.rest]

    @property
    def hours_h(self) -> float:
        return sum(costs.hours_h for costs in self.all_costs)

    @property
    def rework_h(self) -> float:
        return sum(costs.rework_h for costs in self.all_costs)

    @property
    def mass_g(self) -> float:
        return sum(costs.mass_g for costs in self.all_costs)

    @property
    def total_money(self) -> float | None:
        totals = [costs.total.value for costs in self.all_costs if costs.total and costs.total.value is not None]
        return sum(totals) if totals else None


def costs_of_commission(commission: Commission) -> CommissionCosts:
    made = list(commission.copies.order_by("number"))
    found = costs_of(made, commission)
    hours = [row for costs in found.values() for row in costs.hours]
    estimates = {row.kind: row for row in WorkEstimate.objects.filter(commission=commission)}
    copies = [(copy, found[copy.pk]) for copy in made]
    return CommissionCosts(copies, found[None], _kinds(hours, estimates), people_of(hours))


def _kinds(hours: list[WorkHours], estimates: dict[str, WorkEstimate]) -> list[KindLine]:
    lines = []
    for kind in WorkKind:
        rows = [row for row in hours if row.kind == kind]
        if rows or kind in estimates:
            again = sum(row.work_h for row in rows if row.is_rework)
            lines.append(KindLine(kind.label, estimates.get(kind), sum(row.work_h for row in rows), again))
    return lines


def people_of(hours: list[WorkHours]) -> list[tuple[str, str, float]]:
    """Person, kind of work and hours, in the order of the work."""
    found: dict[tuple[str, str], float] = {}
    for row in sorted(hours, key=lambda row: (str(row.person), list(WorkKind).index(WorkKind(row.kind)))):
        key = (str(row.person), row.get_kind_display())
        found[key] = found.get(key, 0.0) + row.work_h
    return [(person, kind, total) for (person, kind), total in found.items()]
