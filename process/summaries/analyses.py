"""An analysis worked out and judged: titrations at the mark, chloride, and what the hydrometer says."""

from dataclasses import dataclass

from pint import Quantity

from process.chemistry.additions import at_the_mark
from process.chemistry.errors import ChemistryError
from process.chemistry.limits import Limits, Verdict, verdict
from process.chemistry.solutions import (
    chloride_found,
    copper_in_salt,
    copper_sulphate_found,
    sample_in_aliquot,
    sulphuric_acid_found,
)
from process.chemistry.worked import Working, worked
from process.models import BathAnalysis, BathLimit, Constituent
from process.summaries.analysis_density import density_of
from process.summaries.evidence import quantity
from process.summaries.figures import apart
from records.figures import Figure
from records.units import show

TITRATIONS = (
    (Constituent.COPPER_SULPHATE, copper_sulphate_found, "copper"),
    (Constituent.SULPHURIC_ACID, sulphuric_acid_found, "acid"),
    (Constituent.CHLORIDE, chloride_found, "chloride"),
)


@dataclass(frozen=True)
class Found:
    """One constituent of one analysis against the bath's limits."""

    constituent: str
    label: str
    figure: Figure
    verdict: Verdict
    limit: BathLimit | None
    quantity: Quantity

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
    density: tuple[Figure, ...] = ()

    @property
    def verdict(self) -> Verdict:
        order = [Verdict.IN_LIMITS, Verdict.WARNING, Verdict.STOP]
        return max((each.verdict for each in self.found), key=order.index, default=Verdict.IN_LIMITS)

    def of(self, constituent: str) -> Found | None:
        return next((each for each in self.found if each.constituent == constituent), None)


def analysis_summary(analysis: BathAnalysis) -> AnalysisSummary:
    """The titrations worked out and judged by the bath's own limits."""
    limits = {limit.constituent: limit for limit in analysis.bath.limits.all()}
    found = []
    for constituent, function, prefix in TITRATIONS:
        if working := _titrated(analysis, function, prefix):
            found.append(_found(analysis, constituent, limits.get(constituent), working))
    if analysis.chloride_mg_l is not None and analysis.chloride_titrant_ml is None:
        found.append(_chloride(analysis, limits.get(Constituent.CHLORIDE)))
    summary = AnalysisSummary(analysis, found)
    salt, acid = summary.of(Constituent.COPPER_SULPHATE), summary.of(Constituent.SULPHURIC_ACID)
    return AnalysisSummary(
        analysis, found, density_of(analysis, salt.quantity if salt else None, acid.quantity if acid else None)
    )


def _titrated(analysis: BathAnalysis, function, prefix: str) -> Working | None:
    titrant = quantity(analysis, f"{prefix}_titrant_ml")
    molarity = quantity(analysis, f"{prefix}_titrant_mol_l")
    sample = _sample(analysis, prefix)
    if titrant is None or molarity is None or sample is None:
        return None
    return worked(function, titrant=titrant, molarity=molarity, sample=sample)


def _sample(analysis: BathAnalysis, prefix: str) -> Quantity | None:
    """The bath that was titrated; of a diluted sample, what stands in the part taken."""
    sample = quantity(analysis, f"{prefix}_sample_ml")
    if prefix != "copper" or sample is None or not (analysis.copper_taken_ml and analysis.copper_flask_ml):
        return sample
    taken, flask = quantity(analysis, "copper_taken_ml"), quantity(analysis, "copper_flask_ml")
    return sample_in_aliquot(taken, sample, flask)


def _limits(limit: BathLimit | None) -> Limits:
    if limit is None:
        return Limits("g/L")
    return Limits(
        "g/L", limit.target_g_l, limit.warn_low_g_l, limit.warn_high_g_l, limit.stop_low_g_l, limit.stop_high_g_l
    )


def _found(analysis: BathAnalysis, constituent: str, limit: BathLimit | None, titrated: Working) -> Found:
    """Stated as the bath would be at its mark: what evaporated is no change of what is dissolved."""
    working, note = _at_the_mark(analysis, titrated)
    suffix, unit = ("_mg_l", "mg/L") if constituent == Constituent.CHLORIDE else ("_g_l", "g/L")
    value, spread = apart(working.quantity.m_as(unit))
    target = limit.target_g_l if limit else None
    if target is not None and suffix == "_mg_l":
        target *= 1000
    if constituent == Constituent.COPPER_SULPHATE:
        copper, _ = apart(copper_in_salt(working.quantity).m_as("g/L"))
        note = f"{note} It holds {show(copper, '_g_l')} of copper.".strip()
    label = Constituent(constituent).label
    figure = Figure(label, value, suffix, plus_minus=spread, note=note, target=target, working=working)
    return Found(constituent, label, figure, verdict(working.quantity, _limits(limit)), limit, working.quantity)


def _at_the_mark(analysis: BathAnalysis, titrated: Working) -> tuple[Working, str]:
    now, mark = quantity(analysis, "volume_now_l"), quantity(analysis.bath, "volume_l")
    if now is None or analysis.volume_now_l == analysis.bath.volume_l:
        return titrated, ""
    try:
        working = worked(at_the_mark, found=titrated.quantity, volume_now=now, volume_mark=mark)
    except ChemistryError:
        return titrated, "The level when sampled cannot be allowed for."
    as_is = show(apart(titrated.quantity.m_as("g/L"))[0], "_g_l")
    return working, f"{as_is} in the sample, taken at {show(analysis.volume_now_l, '_l')}."


def _chloride(analysis: BathAnalysis, limit: BathLimit | None) -> Found:
    label = Constituent.CHLORIDE.label
    figure = Figure(label, analysis.chloride_mg_l, "_mg_l", kind=analysis.evidence("chloride_mg_l"),
                    plus_minus=analysis.plus_minus("chloride_mg_l"),
                    target=limit.target_g_l * 1000 if limit and limit.target_g_l else None)  # fmt: skip
    found = quantity(analysis, "chloride_mg_l")
    return Found(Constituent.CHLORIDE, label, figure, verdict(found, _limits(limit)), limit, found)
