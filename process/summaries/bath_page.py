"""Everything that the pages and the paper of a bath show, read once."""

from dataclasses import dataclass
from datetime import date

from process.models import Anode, Bath, BathAddition, BathService
from process.summaries.analyses import AnalysisSummary, analysis_summary
from process.summaries.bath_balance import Balance, balance_of
from process.summaries.bath_between import Between, between_analyses
from process.summaries.bath_corrections import Correction, corrections_of
from process.summaries.bath_since import Since, since_each
from process.summaries.baths import LedgerLine, Standing, bath_ledger, end_of, standing_of


@dataclass(frozen=True)
class BathReading:
    bath: Bath
    standing: Standing
    analyses: list[AnalysisSummary]  # the latest first
    ledger: list[LedgerLine]
    since: list[Since]
    stretches: list[Between]  # in time order
    corrections: list[Correction]
    anodes: list[Anode]
    services: list[BathService]
    additions: list[BathAddition]

    @property
    def balances(self) -> list[Balance]:
        """One for each analysis that has one before it, the latest first."""
        known = {summary.analysis.pk: summary for summary in self.analyses}
        pairs = [each for each in self.stretches if each.first and each.last]
        return [self._balance(each, known) for each in reversed(pairs)]

    def balance_to(self, number: str) -> Balance | None:
        """The balance that ends with an analysis."""
        return next((each for each in self.balances if each.last.analysis.number == number), None)

    @property
    def last_balance(self) -> Balance | None:
        """The latest that says something: runs, or what was added, lie within it."""
        return next((each for each in self.balances if each.runs or each.added), None)

    def _balance(self, stretch: Between, known: dict[int, AnalysisSummary]) -> Balance:
        first, last = known[stretch.first.pk], known[stretch.last.pk]
        return balance_of(stretch, first, last, self.anodes, self.services, self.additions)


def read_bath(bath: Bath, on: date) -> BathReading:
    analyses = list(bath.analyses.select_related("analyst"))
    for analysis in analyses:
        analysis.bath = bath
    summaries, ledger = [analysis_summary(analysis) for analysis in analyses], bath_ledger(bath)
    services = list(bath.services.select_related("done_by"))
    return BathReading(
        bath, _standing(bath, summaries, ledger, on), summaries, ledger,
        since_each(bath, ledger, services, analyses[0] if analyses else None),
        between_analyses(bath, analyses, ledger), corrections_of(summaries[0]) if summaries else [],
        list(bath.anode_rows.prefetch_related("weighings")), services,
        list(bath.additions.select_related("added_by", "analysis")),
    )  # fmt: skip


def _standing(bath: Bath, summaries: list[AnalysisSummary], ledger: list[LedgerLine], on: date) -> Standing:
    """From what is read already; the same judgement as at a start."""
    until = end_of(on)
    last = next((each.analysis for each in summaries if each.analysis.sampled_at < until), None)
    since = sum(line.charge_ah for line in ledger if last and last.sampled_at <= line.started_at < until)
    return standing_of(bath, last, since, on)
