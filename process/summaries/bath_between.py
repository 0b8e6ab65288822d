"""What lies between two analyses: runs with their charge and deposits, and the copies that came of them."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import pairwise

from process.chemistry.faraday import deposited_mass
from process.models import Bath, BathAnalysis, Cathode, Run
from process.summaries.baths import LedgerLine
from process.summaries.cathodes import gain_of, shell_of
from process.summaries.figures import apart, figure
from process.summaries.planning import metal_of, taken_efficiency
from records.figures import Figure
from records.models import Item
from records.units import ureg

ABSORBED = "On a core more than Faraday’s law allows is absorbed bath: the efficiency planned is taken instead."
NOT_WEIGHED = "Not weighed: the efficiency planned is taken."


@dataclass(frozen=True)
class BetweenRun:
    """A run with what it took from the bath."""

    line: LedgerLine
    cathodes: tuple[Cathode, ...]
    deposit: Figure

    @property
    def run(self) -> Run:
        return self.line.run

    @property
    def copies(self) -> list[Item]:
        made = {}
        for shell in filter(None, map(shell_of, self.cathodes)):
            if shell.making_up_id:
                made[shell.making_up_id] = shell.making_up.copy
        return list(made.values())


@dataclass(frozen=True)
class Between:
    """The runs that began after one analysis and before the next; at the ends one of them is missing."""

    first: BathAnalysis | None
    last: BathAnalysis | None
    runs: list[BetweenRun] = field(default_factory=list)

    @property
    def charge_ah(self) -> float:
        return sum(each.line.charge_ah for each in self.runs)


def between_analyses(
    bath: Bath, analyses: Iterable[BathAnalysis], ledger: list[LedgerLine]
) -> list[Between]:  # fmt: skip
    """The stretches in time order; one without runs stays, since an analysis ends it."""
    ordered = sorted(analyses, key=lambda each: each.sampled_at)
    runs = _runs(ledger)
    edges = [None, *ordered, None]
    stretches = [
        Between(first, last, [each for each in runs if _lies(each.line, first, last)])
        for first, last in pairwise(edges)
    ]
    return [each for each in stretches if each.runs or (each.first and each.last)]


def _lies(line: LedgerLine, first: BathAnalysis | None, last: BathAnalysis | None) -> bool:
    after = first is None or line.started_at >= first.sampled_at
    return after and (last is None or line.started_at < last.sampled_at)


def _runs(ledger: list[LedgerLine]) -> list[BetweenRun]:
    rows = Cathode.objects.filter(run__in=[line.run for line in ledger]).select_related(
        "core", "shell__item", "shell__making_up__copy"
    )
    hung: dict[int, list[Cathode]] = {}
    for row in rows:
        hung.setdefault(row.run_id, []).append(row)
    return [BetweenRun(line, (cathodes := tuple(hung.get(line.run.pk, ()))), deposit_of(line, cathodes))
            for line in ledger]  # fmt: skip


def deposit_of(line: LedgerLine, cathodes: tuple[Cathode, ...]) -> Figure:
    """What the rail gained on the balance; where that is missing or cannot be true, by charge and efficiency."""
    name, gains = line.run.number, [gain_of(cathode) for cathode in cathodes]
    weighed = sum(gains[1:], start=gains[0]) if gains and all(gain is not None for gain in gains) else None
    if weighed is not None and not _is_absorbed(line, cathodes, weighed):
        grams, spread = apart(weighed.m_as("g"))
        return Figure(f"deposited in {name}", grams, "_g", "measured", spread)
    return _by_charge(line, ABSORBED if weighed is not None else NOT_WEIGHED)


def _is_absorbed(line: LedgerLine, cathodes: tuple[Cathode, ...], weighed) -> bool:
    metal = metal_of(line.run)
    if metal is None or not any(cathode.core_id for cathode in cathodes):
        return False
    theory = deposited_mass(metal, ureg.Quantity(line.charge_ah, "A*h"))
    return apart(weighed.m_as("g"))[0] > apart(theory.m_as("g"))[0]


def _by_charge(line: LedgerLine, note: str) -> Figure:
    metal, charge = metal_of(line.run), ureg.Quantity(line.charge_ah, "A*h")
    label = f"deposited in {line.run.number}"
    if metal is None:
        return Figure(label, None, "_g", "estimated", note="The metal of this run is not known here.")
    share = taken_efficiency(line.run.planned_efficiency_pct / 100)
    found = figure(label, "_g", deposited_mass, ion=metal, charge=charge, efficiency=share)
    return Figure(label, found.value, "_g", "estimated", found.plus_minus, note, None, found.working)
