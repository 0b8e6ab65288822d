"""A bath as pages show it: its ampere-hour ledger, and the standing of its last analysis."""

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from django.utils import timezone

from process.chemistry import baths as chemistry
from process.chemistry.limits import Verdict
from process.models import Bath, BathAnalysis, Event, Run
from process.summaries.analyses import AnalysisSummary as AnalysisSummary
from process.summaries.analyses import analysis_summary
from process.summaries.charge import chosen_charge_ah
from records.clock import day_words
from records.units import ureg


@dataclass(frozen=True)
class LedgerLine:
    run: Run
    started_at: datetime
    charge_ah: float
    total_ah: float
    per_litre_ah_l: float


@dataclass(frozen=True)
class Standing:
    """Whether the last analysis still holds on a day."""

    holds: bool
    sentence: str


def bath_ledger(bath: Bath) -> list[LedgerLine]:
    """Ampere-hours after each run that has started, in time order, from the opening figure on."""
    entered = [
        (run, event.at)
        for run in bath.runs.with_evidence().select_related("operator")
        for event in run.events.all()
        if _is_entry(event)
    ]
    started = {run.pk: at for run, at in entered}
    runs = sorted((run for run, _ in entered), key=lambda run: started[run.pk])
    charges = [chosen_charge_ah(run) for run in runs]
    opening = ureg.Quantity(bath.opening_charge_ah, "A*h")
    totals = chemistry.ledger(opening, [ureg.Quantity(charge, "A*h") for charge in charges])
    return [
        LedgerLine(run, started[run.pk], charge, total.m_as("A*h"), total.m_as("A*h") / bath.volume_l)
        for run, charge, total in zip(runs, charges, totals, strict=True)
    ]


def _is_entry(event: Event) -> bool:
    return event.kind == Event.Kind.ENTRY


def end_of(day: date) -> datetime:
    """Midnight after a day, by the museum's clock."""
    return timezone.make_aware(datetime.combine(day + timedelta(days=1), time()))


def analysis_standing(bath: Bath, on: date, ledger: list[LedgerLine] | None = None) -> Standing:
    """Whether an analysis holds on a day: not too old, not too much charge since, and inside the stop limits."""
    ledger = bath_ledger(bath) if ledger is None else ledger
    analysis = bath.analyses.filter(sampled_at__lt=end_of(on)).order_by("-sampled_at").first()
    if analysis is None:
        return standing_of(bath, None, 0.0, on)
    since = sum(line.charge_ah for line in ledger if analysis.sampled_at <= line.started_at < end_of(on))
    return standing_of(bath, analysis, since, on)


def standing_of(bath: Bath, analysis: BathAnalysis | None, since_ah: float, on: date) -> Standing:
    """The standing from the last analysis and the charge that has passed since."""
    if analysis is None:
        return Standing(False, f"Bath {bath.number} has no analysis before {day_words(on)}: analyse it.")
    age = (on - timezone.localdate(analysis.sampled_at)).days
    return Standing(*_judge(bath, analysis, age, since_ah / bath.volume_l))


def _judge(bath: Bath, analysis: BathAnalysis, age: int, since_ah_l: float) -> tuple[bool, str]:
    name = f"{analysis.number} of bath {bath.number}"
    if age > bath.analysis_valid_days_count:
        return False, f"{name} is {age} days old; it holds for {bath.analysis_valid_days_count}. Analyse the bath."
    if since_ah_l > bath.analysis_valid_ah_l:
        return (
            False,
            f"{since_ah_l:.1f} Ah/L since {name}; it holds for {bath.analysis_valid_ah_l:g}. Analyse the bath.",
        )
    summary = analysis_summary(analysis)
    if summary.verdict == Verdict.STOP:
        outside = ", ".join(f.label for f in summary.found if f.verdict == Verdict.STOP)
        return False, f"{name} finds {outside} outside the stop limits. Correct the bath and analyse again."
    if not any(found.is_judged for found in summary.found):
        return False, f"{name} cannot be judged: ask the conservator to set the limits of the bath."
    unjudged = [found.label for found in summary.found if not found.is_judged]
    without = f" No limits are set for {' and '.join(unjudged)}." if unjudged else ""
    return True, f"{name}: {_age_words(age)}, {since_ah_l:.1f} Ah/L since.{without}"


def _age_words(days: int) -> str:
    return "of the same day" if days == 0 else "1 day old" if days == 1 else f"{days} days old"
