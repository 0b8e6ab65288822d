"""What speaks against a mould on a surface: the table, active deterioration, porosity, undercuts, the patch."""

from collections.abc import Iterable
from dataclasses import dataclass

from records.models import Compatibility, RiskAssessment

Verdict = Compatibility.Verdict
Decision = RiskAssessment.Decision
NO_CONTACT = {Decision.INDIRECT, Decision.REFUSE, ""}
RIGID = {"plaster", "fusible alloy"}
STATES = {Verdict.USUAL: "done", Verdict.AFTER_TEST: "look", Verdict.AVOID: "blocked"}
SENSITIVITIES = ("heat", "water", "solvent", "pressure", "sulphur", "ammonia", "acid or alkali", "oils")


@dataclass(frozen=True)
class Remark:
    """One thing to be said of the proposal; a blocking one refuses contact unless a reason is written."""

    state: str
    sentence: str

    @property
    def is_blocking(self) -> bool:
        return self.state == "blocked"


def rows_for(surfaces: Iterable[str]) -> list[Compatibility]:
    """Every material on the surfaces of a piece."""
    rows = Compatibility.objects.filter(surface__label__in=list(surfaces), is_retired=False)
    return list(rows.select_related("surface", "material"))


def remarks(risk: RiskAssessment, rows: list[Compatibility] | None = None) -> list[Remark]:
    """What the table and the rule on routes say of an assessment, the worst first."""
    rows = rows_for(risk.surfaces) if rows is None else rows
    found = [*_deterioration(risk), *_table(risk, rows), *_porosity(risk), *_undercut(risk)]
    return sorted(found, key=lambda remark: ("blocked", "look", "open", "done").index(remark.state))


def _deterioration(risk: RiskAssessment) -> Iterable[Remark]:
    if risk.deterioration == "yes":
        yield Remark("blocked", "Active deterioration: contact is refused unless there is a reason to go on.")
    elif risk.deterioration == "unknown":
        yield Remark("look", "Whether it deteriorates is not known: look before anything touches it.")


def _table(risk: RiskAssessment, rows: list[Compatibility]) -> Iterable[Remark]:
    if risk.mould_material is None:
        return
    mine = {row.surface.label: row for row in rows if row.material_id == risk.mould_material_id}
    for surface in risk.surfaces:
        row = mine.get(surface)
        if row is None:
            words = f"{risk.mould_material} on {surface}: the table does not say; only a test patch does."
            yield Remark("done" if risk.patch_result == "passed" else "blocked", words)
            continue
        said = f" ({row.words})" if row.words else ""
        words = f"{risk.mould_material} on {surface}: {row.get_verdict_display()}{said}."
        passed = row.verdict == Verdict.AFTER_TEST and risk.patch_result == "passed" and risk.barrier
        state = "done" if passed else "blocked" if row.verdict == Verdict.AFTER_TEST else STATES[Verdict(row.verdict)]
        yield Remark(state, f"{words}{_lacking(risk) if row.verdict == Verdict.AFTER_TEST else ''}")


def _lacking(risk: RiskAssessment) -> str:
    if risk.patch_result == "failed":
        return " The patch failed."
    patch = " The patch passed." if risk.patch_result else " No patch is recorded."
    return patch if risk.barrier else f"{patch} No barrier is named."


def _porosity(risk: RiskAssessment) -> Iterable[Remark]:
    if (risk.porosity_count or 0) >= 2 and not (risk.patch_result == "passed" and risk.barrier):
        yield Remark("blocked", "A porous surface bears contact only through a barrier that passed a test.")


def _undercut(risk: RiskAssessment) -> Iterable[Remark]:
    rigid = risk.mould_material and risk.mould_material.label in RIGID
    if (risk.undercut_count or 0) > 2 and rigid:
        yield Remark("blocked", "Deep undercuts and a rigid mould: take a flexible one, or make it in pieces.")


def faults(risk: RiskAssessment) -> list[str]:
    """Why it may not be decided so: contact against what blocks it, without a word on why all the same."""
    if risk.decision in NO_CONTACT or risk.all_the_same.strip():
        return []
    return [remark.sentence for remark in remarks(risk) if remark.is_blocking]
