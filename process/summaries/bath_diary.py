"""The diary of a bath: everything that happened to it on one line of time."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from django.urls import reverse

from process.models import AnodeWeighing, Bath, BathAddition, BathAnalysis, BathService, Event, Run
from process.summaries.analyses import analysis_summary
from process.summaries.baths import LedgerLine
from records.models import Tracked
from records.units import decimals_written, show, suffix_of
from records.wording.phrases import joined

KINDS = {
    "analysis": "analyses", "addition": "additions", "service": "work at the bath", "anode": "anode weighings",
    "run": "runs",
}  # fmt: skip


@dataclass(frozen=True)
class Entry:
    """One line of the diary; `row` is what stands behind it."""

    at: datetime
    kind: str
    title: str
    words: str
    person: str
    lot: str
    url: str
    row: Any

    @property
    def is_struck(self) -> bool:
        """Kept and shown, and counted no more."""
        return getattr(self.row, "is_struck", False)

    @property
    def struck_words(self) -> str:
        return f"struck out: {self.row.struck_reason}" if self.is_struck else ""

    @property
    def verb(self) -> str:
        """What one must be allowed to do with the row to follow its line: a run is looked at, the rest is corrected."""
        return "view" if isinstance(self.row, Run) else "write"

    @property
    def model(self) -> str:
        return type(self.row).__name__

    @property
    def key(self) -> str:
        return f"{self.at.isoformat()}~{self.kind}~{self.row.pk}"


def diary_of(bath: Bath, ledger: Iterable[LedgerLine], kinds: Iterable[str]) -> list[Entry]:
    """The latest first; only the kinds asked for are read."""
    sources = {
        "analysis": _analyses, "addition": _additions, "service": _services, "anode": _weighings,
        "run": lambda bath: _runs(ledger),
    }  # fmt: skip
    found = [entry for kind in kinds for entry in sources[kind](bath)]
    return sorted(found, key=lambda entry: entry.key, reverse=True)


def _door(row: Any, route: str, key: Any, kind: str) -> str:
    """Where a row is corrected; one that was struck out can only be put back."""
    return reverse("strike", args=[kind, row.pk]) if row.is_struck else reverse(route, args=[key])


def _person(party: Any) -> str:
    return str(party) if party else ""


def _analyses(bath: Bath) -> Iterator[Entry]:
    for row in BathAnalysis.every.filter(bath=bath).select_related("analyst"):
        row.bath = bath
        found = [f"{each.label} {show(each.figure.value, each.figure.suffix)}" for each in analysis_summary(row).found]
        said = [row.get_decision_display() if row.decision else "", row.note]
        words = joined([", ".join(found), *said])
        yield Entry(row.sampled_at, "analysis", f"Analysis {row.number}", words, _person(row.analyst), "",
                    _door(row, "analysis_edit", row.number, "bath-analysis"), row)  # fmt: skip


def _additions(bath: Bath) -> Iterator[Entry]:
    for row in BathAddition.every.filter(bath=bath).select_related("added_by", "analysis"):
        why = f"after {row.analysis.number}" if row.analysis else ""
        words = joined([amount_of(row), row.reason, why], ", ")
        yield Entry(row.added_at, "addition", f"Added: {row.what}", words, _person(row.added_by), row.lot,
                    _door(row, "addition_edit", row.pk, "bath-addition"), row)  # fmt: skip


def _services(bath: Bath) -> Iterator[Entry]:
    for row in BathService.every.filter(bath=bath).select_related("done_by"):
        words = joined([amount_of(row), row.note], ", ")
        yield Entry(row.done_at, "service", row.get_kind_display().capitalize(), words, _person(row.done_by), row.lot,
                    _door(row, "service_edit", row.pk, "bath-work"), row)  # fmt: skip


def _weighings(bath: Bath) -> Iterator[Entry]:
    rows = AnodeWeighing.every.filter(anode__bath=bath).select_related("anode", "weighed_by")
    for row in rows:
        words = joined([_written(row, "mass_g"), row.note], ", ")
        yield Entry(row.weighed_at, "anode", f"Anode {row.anode.label} weighed", words, _person(row.weighed_by), "",
                    _door(row, "anode_weighing_edit", row.pk, "anode-weighing"), row)  # fmt: skip


def _runs(ledger: Iterable[LedgerLine]) -> Iterator[Entry]:
    for line in ledger:
        stopped = next((e.at for e in line.run.events.all() if e.kind == Event.Kind.STOP), None)
        words = f"{show(line.charge_ah, '_ah')}; ledger {show(line.total_ah, '_ah')}"
        if stopped is None:
            words += "; still running"
        outcome = f". {line.run.get_outcome_display().capitalize()}" if line.run.outcome else ""
        yield Entry(line.started_at, "run", f"Run {line.run.number}", words + outcome, _person(line.run.operator), "",
                    line.run.get_absolute_url(), line.run)  # fmt: skip


def amount_of(row: BathAddition | BathService) -> str:
    """Mass and volume as they were noted."""
    fields = ("mass_g", "volume_ml", "volume_l")
    return ", ".join(_written(row, field) for field in fields if getattr(row, field, None) is not None)


def _written(row: Tracked, field: str) -> str:
    """With the digits and the ± that the person wrote: a balance that shows whole grams is given no decimals."""
    suffix = suffix_of(field)
    digits = decimals_written(row.as_typed.get(field) or {}, suffix)
    return show(getattr(row, field), suffix, digits=digits, plus_minus=row.plus_minus(field))
