"""Tags of many things on sheets of labels."""

from collections.abc import Callable, Sequence
from datetime import datetime

from reportlab.lib.units import mm

from records.models import Item
from records.pdf.label_sheets import build_sheet, build_trial
from records.pdf.refusal import CannotPrint
from records.pdf.sheets import SHEETS
from records.pdf.tags import Tag
from records.reports.tags import sale_ticket_of, shelf_tag_of, tag_of

READING = 0.7  # share of the work that goes to the rows
MAKERS: dict[str, Callable[[Item], Tag]] = {"object": tag_of, "shelf": shelf_tag_of, "sale": sale_ticket_of}


def make_tags(
    items: Sequence[Item],
    kind: str,
    *,
    sheet: str,
    issued_at: datetime,
    museum: str = "",
    start: int = 1,
    right_mm: float = 0.0,
    up_mm: float = 0.0,
    marks: bool = False,
    tell: Callable[[float], object] = lambda share: None,  # of the whole work
) -> bytes:
    if not items:
        raise CannotPrint("None of these may have its tag yet: see what is missing, and print the others.")
    tags = []
    for item in items:
        tags.append(MAKERS[kind](item))
        tell(READING * len(tags) / len(items))
    return build_sheet(
        tags, SHEETS[sheet], issued_at, museum=museum, skip=start - 1, nudge=(right_mm * mm, up_mm * mm), marks=marks,
        tell=lambda done: tell(READING + (1 - READING) * done / len(tags)),
    )  # fmt: skip


def make_trial(
    *, sheet: str, issued_at: datetime, museum: str = "", right_mm: float = 0.0, up_mm: float = 0.0
) -> bytes:
    return build_trial(SHEETS[sheet], issued_at, museum=museum, nudge=(right_mm * mm, up_mm * mm))
