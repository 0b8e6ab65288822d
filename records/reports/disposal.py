"""The paper of a piece that is given up: why, by whose decision, how, before whom, and what is left."""

from typing import Any

from records.extensions import PaperContext
from records.models import Disposal
from records.pdf import blocks as b
from records.pdf.document import build
from records.reports.attached import record
from records.reports.parts import caption_of, head, local_day, printed
from records.sentences import named, title_of

KIND = "Disposal paper"
STAYS = "The record, the photographs and the number stay for ever; the number is not given again."


def make(row: Disposal, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    item = row.item
    data = record(KIND, row.number, context, {"disposal": [row], "thing": [item], "marks": item.marks.all()})
    done = f"carried out on {local_day(row.done_on)}" if row.done_on else "not carried out yet"
    summary = f"{title_of(item).rstrip('.')}: {row.get_way_display()}, decided on {local_day(row.decided_on)}, {done}."
    title = f"{item.number} is no more" if row.done_on else f"{item.number} is to be given up"
    paper = head(KIND, row.number, title, summary, context, named(item, row.number))
    return build(paper, _blocks(row, context), data, context.issued_at), data


def _blocks(row: Disposal, context: PaperContext) -> list[b.Block]:
    item, marks = row.item, ", ".join(f"“{mark.text}”" for mark in row.item.marks.all())
    facts = (
        b.Fact("Number", item.number), b.Fact("What it is", title_of(item)), b.Fact("Marks", marks or "none recorded"),
        b.Fact("Owner", str(item.owner or "")), b.Fact("Decided by", f"{row.decided_by}, {row.authority}"),
        b.Fact("Decided on", local_day(row.decided_on)), b.Fact("What becomes of it", row.get_way_display()),
        b.Fact("Carried out on", local_day(row.done_on)), b.Fact("By", str(row.done_by or "")),
        b.Fact("Made unusable or marked", row.method),
    )  # fmt: skip
    shown = printed(row.photo, caption_of(row.photo, item)) if row.photo else None
    return [
        b.Cover(shown, tuple(fact for fact in facts if fact.value)),
        b.Heading("Why"), b.Prose(row.reason),
        *([b.Heading("Parts kept, and parts for the bath"), b.Prose(row.kept)] if row.kept else []),
        b.Prose(STAYS),
        b.Signatures((
            b.Signer(str(row.decided_by), f"Decided: {row.authority}"),
            b.Signer(str(row.done_by or ""), "Carried out", local_day(row.done_on)),
            b.Signer(str(row.witness or ""), "Witness"),
        )),
    ]  # fmt: skip
