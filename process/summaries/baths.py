"""A bath as pages show it: analyses worked out, standing of the last one, ampere-hour ledger."""

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from django.utils import timezone

from process.chemistry import baths as chemistry
from process.chemistry.limits import Limits, Verdict, verdict
from process.chemistry.solutions import copper_sulphate_found, sulphuric_acid_found
from process.chemistry.worked import Working, worked
from process.models import Bath, BathAnalysis, BathLimit, Constituent, Event, Run
from process.summaries.charge import chosen_charge_ah
from process.summaries.evidence import quantity
from records.clock import day_words
from records.figures import Figure
from records.units import ureg


@dataclass(frozen=True)
class Found:
    """One constituent of one analysis against the bath's limits."""

    constituent: str
    label: str
    figure: Figure
    verdict: Verdict
    limit: BathLimit | None

    @property
    def is_judged(self) -> bool:
        """Without a limit there is nothing to be inside of."""
        bounds = ("warn_low_g_l", "warn_high_g_l", "stop_low_g_l", "stop_high_g_l")
        return self.limit is not None and any(getattr(self.limit, name) is not None for name in bounds)

    @property
    def word(self) -> str:
        return self.verdict.value if self.is_judged else "no limits set"

    @property
    def state(self) -> str:
        if not self.is_judged:
            return "open"
        return {Verdict.IN_LIMITS: "done", Verdict.WARNING: "look", Verdict.STOP: "blocked"}[self.verdict]


@dataclass(frozen=True)
class AnalysisSummary:
    analysis: BathAnalysis
    found: list[Found]

    @property
    def verdict(self) -> Verdict:
        order = [Verdict.IN_LIMITS, Verdict.WARNING, Verdict.STOP]
        return max((each.verdict for each in self.found), key=order.index, default=Verdict.IN_LIMITS)


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
    analysis: BathAnalysis | None = None
    age_days_count: int | None = None
    since_ah_l: float | None = None


def _titrated(analysis: BathAnalysis, function, prefix: str) -> Working | None:
    titrant = quantity(analysis, f"{prefix}_titrant_ml")
    molarity = quantity(analysis, f"{prefix}_titrant_mol_l")
    sample = quantity(analysis, f"{prefix}_sample_ml")
    if titrant is None or molarity is None or sample is None:
        return None
    return worked(function, titrant=titrant, molarity=molarity, sample=sample)


def _limits(limit: BathLimit | None) -> Limits:
    if limit is None:
        return Limits("g/L")
    return Limits(
        "g/L", limit.target_g_l, limit.warn_low_g_l, limit.warn_high_g_l, limit.stop_low_g_l, limit.stop_high_g_l
    )


def _found(constituent: str, limit: BathLimit | None, working: Working) -> Found:
    label = Constituent(constituent).label
    value = working.quantity.m_as("g/L")
    figure = Figure(
        label, getattr(value, "nominal_value", value), "_g_l", plus_minus=working.result.uncertainty,
        target=limit.target_g_l if limit else None, working=working,
    )  # fmt: skip
    return Found(constituent, label, figure, verdict(working.quantity, _limits(limit)), limit)


def analysis_summary(analysis: BathAnalysis) -> AnalysisSummary:
    """The titrations worked out and judged by the bath's own limits."""
    limits = {limit.constituent: limit for limit in analysis.bath.limits.all()}
    found = []
    for constituent, function, prefix in (
        (Constituent.COPPER_SULPHATE, copper_sulphate_found, "copper"),
        (Constituent.SULPHURIC_ACID, sulphuric_acid_found, "acid"),
    ):
        if working := _titrated(analysis, function, prefix):
            found.append(_found(constituent, limits.get(constituent), working))
    if analysis.chloride_mg_l is not None:
        found.append(_chloride(analysis, limits.get(Constituent.CHLORIDE)))
    return AnalysisSummary(analysis, found)


def _chloride(analysis: BathAnalysis, limit: BathLimit | None) -> Found:
    label = Constituent.CHLORIDE.label
    figure = Figure(label, analysis.chloride_mg_l, "_mg_l", kind=analysis.evidence("chloride_mg_l"),
                    plus_minus=analysis.plus_minus("chloride_mg_l"),
                    target=limit.target_g_l * 1000 if limit and limit.target_g_l else None)  # fmt: skip
    return Found(
        Constituent.CHLORIDE, label, figure, verdict(quantity(analysis, "chloride_mg_l"), _limits(limit)), limit
    )


def bath_ledger(bath: Bath) -> list[LedgerLine]:
    """Ampere-hours after each run that has started, in time order, from the opening figure on."""
    started = {}
    for event in Event.objects.filter(run__bath=bath, kind=Event.Kind.ENTRY):
        started[event.run_id] = event.at
    runs = bath.runs.filter(pk__in=started).with_evidence()
    runs = sorted(runs, key=lambda run: started[run.pk])
    charges = [chosen_charge_ah(run) for run in runs]
    opening = ureg.Quantity(bath.opening_charge_ah, "A*h")
    totals = chemistry.ledger(opening, [ureg.Quantity(charge, "A*h") for charge in charges])
    return [
        LedgerLine(run, started[run.pk], charge, total.m_as("A*h"), total.m_as("A*h") / bath.volume_l)
        for run, charge, total in zip(runs, charges, totals, strict=True)
    ]


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
    since_ah_l = since_ah / bath.volume_l
    holds, sentence = _judge(bath, analysis, age, since_ah_l)
    return Standing(holds, sentence, analysis, age, since_ah_l)


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
    unjudged = [found.label for found in summary.found if not found.is_judged]
    without = f" No limits are set for {' and '.join(unjudged)}." if unjudged else ""
    return True, f"{name}: {_age_words(age)}, {since_ah_l:.1f} Ah/L since.{without}"


def _age_words(days: int) -> str:
    return "of the same day" if days == 0 else "1 day old" if days == 1 else f"{days} days old"
