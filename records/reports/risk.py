"""The risk assessment of a surface as a paper, with what the museum's table says of it."""

from typing import Any

from records.compatibility import remarks
from records.extensions import PaperContext
from records.models import RiskAssessment
from records.pdf import blocks as b
from records.pdf.document import build
from records.reports.attached import record
from records.reports.parts import head, local_day, signer

KIND = "Risk assessment"
SHAPES = {"done": "●", "look": "▲", "blocked": "■", "open": "○"}


def make(risk: RiskAssessment, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    about = f"{risk.item.number}, {risk.item.title}"
    summary = f"{about}: {risk.get_decision_display()}, assessed by {risk.assessor} on {local_day(risk.assessed_on)}."
    said = [f"{SHAPES[remark.state]} {remark.sentence}" for remark in remarks(risk)]
    blocks = [
        _facts(risk), b.Heading("What the table and the rule say"),
        *(b.Prose(words) for words in said or ["No kind of surface or mould material is named."]),
        b.Heading("Decision"), b.Prose(f"{risk.get_decision_display().capitalize()}. {risk.reason}", leads=True),
        *([b.Prose(f"All the same: {risk.all_the_same}")] if risk.all_the_same else []),
        *([b.Prose(f"Conditions: {risk.conditions}")] if risk.conditions else []),
        b.Signatures((signer(risk, str(risk.assessor), "conservator"),)),
    ]  # fmt: skip
    data = record(KIND, risk.number, context, {"assessment": [risk], "thing": [risk.item]})
    paper = head(KIND, risk.number, f"May {risk.item.number} be moulded?", summary, context)
    return build(paper, blocks, data, context.issued_at), data


def _facts(risk: RiskAssessment) -> b.Block:
    said = (risk.test_patch.rstrip("."), risk.get_patch_result_display(), local_day(risk.patch_on))
    patch = ", ".join(filter(None, said))
    facts = (
        b.Fact("Surface", risk.surface), b.Fact("Kinds of surface", "; ".join(risk.surfaces)),
        b.Fact("Active deterioration", risk.get_deterioration_display()),
        b.Fact("Suffers from", ", ".join(risk.sensitivities)),
        b.Fact("Mould proposed", str(risk.mould_material or "")), b.Fact("Barrier", risk.barrier),
        b.Fact("Test patch", patch), b.Fact("Probability × consequence (of 5 × 5)", _harm(risk)),
    )  # fmt: skip
    return b.FactList(tuple(fact for fact in facts if fact.value))


def _harm(risk: RiskAssessment) -> str:
    before, after = (risk.probability_count, risk.consequence_count), (
        risk.probability_after_count, risk.consequence_after_count,
    )  # fmt: skip
    said = f"{before[0]} × {before[1]}" if all(before) else ""
    return f"{said}; with controls {after[0]} × {after[1]}" if all(after) else said
