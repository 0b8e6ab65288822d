"""The papers of the making: what each is made of, and what forbids it now."""

from collections.abc import Callable
from typing import Any

from process.models import Bath, Mould, Run
from process.panels.copies import making_of
from process.summaries.runs import summarise
from records.extensions import PaperKind, paper_kinds, paper_subjects
from records.models import Item
from records.papers import label_refusals, tag_refusals


def is_made_here(subject: Any) -> bool:
    """A copy made here; of a historic copy nobody knows the process."""
    return isinstance(subject, Item) and subject.made_here


def report_refusals(copy: Item) -> list[str]:
    if making_of(copy) is None:
        return [f"How {copy.number} was made up is not recorded: record its shells and filling first."]
    return tag_refusals(copy)


def certificate_refusals(copy: Item) -> list[str]:
    """Accepted, marked, and with an approved wording: else there is nothing to certify."""
    making = making_of(copy)
    if making is None:
        return report_refusals(copy)
    accepted = any(inspection.accepts for inspection in copy.inspections.all())
    reasons = [] if accepted else [f"{copy.number} is not accepted: a certificate says what was found on inspection."]
    return reasons + label_refusals(copy)


def is_mould(fate: str) -> Callable[[Any], bool]:
    """Only where such an end is recorded; other moulds have nothing to certify."""

    def is_gone(subject: Any) -> bool:
        is_one = isinstance(subject, Item) and subject.kind == Item.Kind.MOULD
        mould = getattr(subject, "mould", None) if is_one else None
        return mould is not None and mould.fate == fate

    return is_gone


def end_refusals(item: Item) -> list[str]:
    """The end of a mould is certified with its day and before a witness."""
    mould = item.mould
    missing = [words for words, there in (("day", mould.fate_on), ("witness", mould.fate_witness_id)) if not there]
    named, end = " and the ".join(missing), "return" if mould.fate == Mould.Fate.RETURNED else "destruction"
    return [f"The {named} of the {end} of {item.number} must be recorded first."] if missing else []


def sheet_refusals(run: Run) -> list[str]:
    if not run.cathodes.exists():
        return [
            f"Nothing hangs on the rail of {run.number} yet: add a cathode, for the figures are reckoned on its area."
        ]
    summary = summarise(Run.objects.with_sheet().get(pk=run.pk))
    if summary.plan is None or summary.plan.time.value is None:
        why = summary.plan.time.note if summary.plan else ""
        return [f"The plan of {run.number} cannot be reckoned. {why}".strip()]
    return []


KINDS = (
    PaperKind(
        code="bath-diary", title="Bath diary", applies_to=lambda subject: isinstance(subject, Bath),
        refusals=lambda bath: [], maker="process.reports.bath_diary.make", act="issue bench sheet",
    ),
    PaperKind(
        code="bench-sheet", title="Bench sheet", applies_to=lambda subject: isinstance(subject, Run),
        refusals=sheet_refusals, maker="process.reports.bench_sheet.make", act="issue bench sheet",
    ),
    PaperKind(
        code="certificate", title="Certificate of reproduction", applies_to=is_made_here, refusals=certificate_refusals,
        maker="process.reports.certificate.make",
    ),
    PaperKind(
        code="mould-destruction", title="Mould destruction certificate", applies_to=is_mould(Mould.Fate.DESTROYED),
        refusals=end_refusals, maker="process.reports.mould_certificate.make",
    ),
    PaperKind(
        code="mould-return", title="Mould return certificate", applies_to=is_mould(Mould.Fate.RETURNED),
        refusals=end_refusals, maker="process.reports.mould_certificate.make",
    ),
    PaperKind(
        code="process-report", title="Process report", applies_to=is_made_here, refusals=report_refusals,
        maker="process.reports.report.make",
    ),
)  # fmt: skip
paper_kinds.update({kind.code: kind for kind in KINDS})
paper_subjects.extend([Bath, Run])
