"""The register's own papers: what each is made of, and what forbids it now."""

from collections.abc import Callable
from typing import Any

from records import labelling
from records.extensions import PaperKind, paper_kinds
from records.models import Commission, ConditionReport, Disposal, Handover, Item, RiskAssessment
from records.reports.marking import is_unmarked, marking_gap

# What has a line of descent of its own to be told; moulds and shells stand on the sheet of what they were taken from.
HEADS = {Item.Kind.ORIGINAL, Item.Kind.HISTORIC_COPY, Item.Kind.CAST, Item.Kind.COPY, Item.Kind.MATRIX}


def is_thing(subject: Any) -> bool:
    return isinstance(subject, Item)


def destroyed(item: Item) -> list[str]:
    """What is no more gets neither label nor tag: either would end on something else."""
    gone = item.status == Item.Status.DESTROYED
    return [f"{item.number} was destroyed: no label and no tag of it prints any more."] if gone else []


def tag_refusals(item: Item) -> list[str]:
    if gone := destroyed(item):
        return gone
    gap = marking_gap(item)
    return [f"{gap} Until it does, only the tag “UNMARKED COPY” prints."] if gap else []


def label_refusals(copy: Item) -> list[str]:
    """Why the label may not be printed now."""
    if gone := destroyed(copy):
        return gone
    label = getattr(copy, "label", None)
    if label is None:
        return [f"No wording is written for {copy.number}: write the label first."]
    reasons = (
        [] if label.is_signed else ["The wording is not approved: a label prints only what the curator has approved."]
    )
    reasons += [complaint.sentence for complaint in labelling.refusals(label)]
    if gap := marking_gap(copy):
        reasons.append(
            f"{gap} A copy that is not marked gets no label: mark it and photograph the mark, or write a concession."
        )
    return reasons


def written_already(report: ConditionReport) -> list[str]:
    """A sheet to write on is for an examination that is still open."""
    return [f"{report.number} is signed: begin the next examination and print its sheet."] if report.is_signed else []


def is_handover(*kinds: str) -> Callable[[Any], bool]:
    return lambda subject: isinstance(subject, Handover) and subject.kind in kinds


def handover_refusals(row: Handover) -> list[str]:
    """A copy without its mark does not travel; what was called off needs no paper."""
    if row.called_off_on:
        return [f"{row.number} was called off."]
    gap = marking_gap(row.item)
    if row.kind == Handover.Kind.FINISHER:
        return [f"{gap} It does not leave the house so."] if gap else []
    return label_refusals(row.item)


def has_a_line(subject: Any) -> bool:
    return is_thing(subject) and subject.kind in HEADS


def is_commission(subject: Any) -> bool:
    return isinstance(subject, Commission)


def consent_refusals(commission: Commission) -> list[str]:
    there = commission.consents.exists()
    return [] if there else [f"No consent is recorded for {commission.number}: ask the owner first."]


def order_refusals(commission: Commission) -> list[str]:
    """The bench works to what was signed."""
    if not commission.specifications.filter(signed_at__isnull=False).exists():
        return [f"No signed specification of {commission.number}: say what the copy must become, and sign it."]
    return []


KINDS = (
    PaperKind(
        code="condition-report", title="Condition report",
        applies_to=lambda subject: isinstance(subject, ConditionReport), refusals=lambda report: [],
        maker="records.reports.condition.make",
    ),
    PaperKind(
        code="condition-sheet", title="Condition sheet",
        applies_to=lambda subject: isinstance(subject, ConditionReport), refusals=written_already,
        maker="records.reports.condition_sheet.make", act="issue bench sheet",
    ),
    PaperKind(
        code="gallery-label", title="Gallery label",
        applies_to=lambda subject: is_thing(subject) and subject.is_copy, refusals=label_refusals,
        maker="records.reports.labels.make",
    ),
    PaperKind(
        code="acknowledgement", title="Acknowledgement of a copy",
        applies_to=lambda subject: is_thing(subject) and subject.is_copy, refusals=label_refusals,
        maker="records.reports.acknowledgement.make",
    ),
    PaperKind(
        code="request-sheet", title="Request sheet", applies_to=is_commission, refusals=lambda file: [],
        maker="records.reports.commission.make_request",
    ),
    PaperKind(
        code="consent", title="Consent", applies_to=is_commission, refusals=consent_refusals,
        maker="records.reports.commission.make_consent",
    ),
    PaperKind(
        code="work-order", title="Work order", applies_to=is_commission, refusals=order_refusals,
        maker="records.reports.commission.make_order",
    ),
    PaperKind(
        code="risk-assessment", title="Risk assessment",
        applies_to=lambda subject: isinstance(subject, RiskAssessment), refusals=lambda risk: [],
        maker="records.reports.risk.make",
    ),
    PaperKind(
        code="custody-paper", title="Custody paper", applies_to=is_handover(Handover.Kind.FINISHER),
        refusals=handover_refusals, maker="records.reports.handover.make",
    ),
    PaperKind(
        code="loan-paper", title="Loan paper", applies_to=is_handover(Handover.Kind.LOAN),
        refusals=handover_refusals, maker="records.reports.handover.make",
    ),
    PaperKind(
        code="transfer-paper", title="Transfer paper", applies_to=is_handover(*Handover.FINAL),
        refusals=handover_refusals, maker="records.reports.handover.make",
    ),
    PaperKind(
        code="descent-sheet", title="Descent sheet", applies_to=has_a_line, refusals=lambda item: [],
        maker="records.reports.family.make",
    ),
    PaperKind(
        code="disposal-paper", title="Disposal paper", applies_to=lambda subject: isinstance(subject, Disposal),
        refusals=lambda row: [], maker="records.reports.disposal.make",
    ),
    PaperKind(
        code="object-tag", title="Object tag", applies_to=is_thing, refusals=tag_refusals,
        maker="records.reports.tags.make_tag",
    ),
    PaperKind(
        code="unmarked-tag", title="Unmarked tag",
        applies_to=lambda subject: is_thing(subject) and is_unmarked(subject), refusals=destroyed,
        maker="records.reports.tags.make_unmarked",
    ),
)  # fmt: skip
paper_kinds.update({kind.code: kind for kind in KINDS})
