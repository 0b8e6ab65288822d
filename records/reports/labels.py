"""The gallery label: nothing but the approved wording, and only for a copy that carries its mark."""

import re
from typing import Any

from django.conf import settings

from records import labelling
from records.extensions import PaperContext, PaperKind, paper_kinds
from records.limits import concessions_of, limits_of
from records.models import Item, LabelWording
from records.pdf.labels import GalleryLabel, build_label
from records.reports.attached import record
from records.reports.marking import marking_gap

KIND = "Gallery label"


def label_of(copy: Item) -> LabelWording | None:
    return getattr(copy, "label", None)


def refusals(copy: Item) -> list[str]:
    """Why the label may not be printed now."""
    label = label_of(copy)
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


def joined_lines(text: str) -> tuple[str, ...]:
    """The typed lines as sentences: a line that runs on is joined to the next, for the label sets its own lines."""
    answer: list[str] = []
    for line in filter(None, (line.strip() for line in text.splitlines())):
        if answer and not re.search(r"[.!?:;]$", answer[-1]):
            answer[-1] += f" {line}"
        else:
            answer.append(line)
    return tuple(answer)


def make(copy: Item, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    label = label_of(copy)
    printed = GalleryLabel(
        kind_and_date=f"{label.kind_of_copy}, {label.copy_date}", title=label.after, lines=joined_lines(label.body),
        credit=label.credit, number=copy.number, limits=tuple(limits_of(copy)),
    )  # fmt: skip
    conceded = concessions_of(copy)
    rows = {"wording": [label], "copy": [copy], "marks": copy.marks.all(), "concessions": conceded}
    data = record(KIND, copy.number, context, rows)
    museum = settings.MUSEUM_NAME
    return build_label(printed, context.issued_at, museum=museum, page_size=context.page_size, record=data), data


paper_kinds["gallery-label"] = PaperKind(
    code="gallery-label", title=KIND, applies_to=lambda subject: isinstance(subject, Item) and subject.is_copy,
    refusals=refusals, build=make,
)  # fmt: skip
