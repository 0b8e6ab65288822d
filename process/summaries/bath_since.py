"""The ledger of a bath counted anew from each piece of work: analysis, filter, bags, carbon."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from process.models import Bath, BathAnalysis, BathService
from process.summaries.baths import LedgerLine

COUNTED = {
    BathService.Kind.FILTER: "since the filter was changed",
    BathService.Kind.BAGS: "since the anode bags were changed",
    BathService.Kind.CARBON: "since it was treated with carbon",
}


@dataclass(frozen=True)
class Since:
    """Charge since something was done; `at` is None where the record has no such entry."""

    label: str
    at: datetime | None
    charge_ah: float | None
    per_litre_ah_l: float | None


def since_each(
    bath: Bath, ledger: list[LedgerLine], services: Iterable[BathService], last: BathAnalysis | None
) -> list[Since]:
    """The whole ledger first, then from each piece of work; a run counts from its start."""
    total = ledger[-1].total_ah if ledger else bath.opening_charge_ah
    found = [Since("whole ledger", None, total, total / bath.volume_l)]
    if last is not None:
        found.append(_since(bath, ledger, f"since {last.number}", last.sampled_at))
    latest = {kind: max((s.done_at for s in services if s.kind == kind), default=None) for kind in COUNTED}
    for kind, label in COUNTED.items():
        at = latest[kind]
        found.append(Since(label, None, None, None) if at is None else _since(bath, ledger, label, at))
    return found


def _since(bath: Bath, ledger: list[LedgerLine], label: str, at: datetime) -> Since:
    charge = sum(line.charge_ah for line in ledger if line.started_at >= at)
    return Since(label, at, charge, charge / bath.volume_l)
