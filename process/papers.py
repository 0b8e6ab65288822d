"""The papers of the making: what each is made of, and what forbids it now."""

from typing import Any

from process.models import Bath, Run
from process.panels.copies import making_of
from process.summaries.runs import summarise
from records.extensions import PaperKind, paper_kinds, paper_subjects
from records.models import Item
from records.papers import tag_refusals


def is_made_here(subject: Any) -> bool:
    """A copy made here; of a historic copy nobody knows the process."""
    return isinstance(subject, Item) and subject.made_here


def report_refusals(copy: Item) -> list[str]:
    if making_of(copy) is None:
        return [f"How {copy.number} was made up is not recorded: record its shells and filling first."]
    return tag_refusals(copy)


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
        code="process-report", title="Process report", applies_to=is_made_here, refusals=report_refusals,
        maker="process.reports.report.make",
    ),
)  # fmt: skip
paper_kinds.update({kind.code: kind for kind in KINDS})
paper_subjects.extend([Bath, Run])
