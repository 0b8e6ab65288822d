"""The gallery label: nothing but the approved wording, and only for a copy that carries its mark."""

import re
from typing import Any

from django.conf import settings
from django.utils.text import capfirst

from records.extensions import PaperContext
from records.family import edition_of
from records.limits import concessions_of, limits_along
from records.models import Item
from records.pdf.labels import GalleryLabel, build_label
from records.reports.attached import record

KIND = "Gallery label"


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
    label, limits = copy.label, limits_along(copy)
    printed = GalleryLabel(
        kind_and_date=label.heading,
        title=label.after,
        lines=joined_lines(label.body),
        credit=label.credit,
        number=" · ".join(filter(None, [copy.number, capfirst(edition_of(copy)) if label.with_edition else ""])),
        second_heading=label.second_heading,
        second_lines=joined_lines(label.second_text),
        limits=tuple(dict.fromkeys(limit.sentence for limit in limits)),
    )
    conceded = concessions_of(copy)
    rows = {"wording": [label], "copy": [copy], "marks": copy.marks.all(), "concessions": conceded}
    data = record(KIND, copy.number, context, rows, limits=limits)
    pdf = build_label(
        printed, context.issued_at, museum=settings.MUSEUM_NAME, distance_m=label.distance_mm / 1000, light=label.light,
        size=label.size, page_size=context.page_size, record=data,
    )  # fmt: skip
    return pdf, data
