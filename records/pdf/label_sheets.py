"""Tags and labels on sheets of self-adhesive labels, and the page that tries how a printer feeds them."""

from collections.abc import Callable, Sequence
from datetime import datetime
from io import BytesIO
from typing import Any

from reportlab.lib.units import mm

from records.pdf import fonts, theme
from records.pdf.labels import finish, new_canvas
from records.pdf.page_sizes import PAGE_SIZES
from records.pdf.sheets import LabelSheet
from records.pdf.tags import Tag

TICK = 2.5 * mm
Nudge = tuple[float, float]  # to the right and upwards, in points


def build_sheet(
    tags: Sequence[Tag],
    sheet: LabelSheet,
    issued_at: datetime,
    *,
    museum: str = "",
    skip: int = 0,
    nudge: Nudge = (0.0, 0.0),
    marks: bool = False,
    tell: Callable[[int], object] = lambda done: None,
) -> bytes:
    """Tags on a label sheet, beginning after the `skip` labels that are used up; `marks` for cutting plain paper.

    `tell` hears how many are drawn.
    """
    if not tags:
        raise ValueError("A sheet of tags needs at least one tag.")
    out = BytesIO()
    canvas = new_canvas(out, PAGE_SIZES[sheet.page])
    on_page = 0
    for done, (tag, (page, x, y)) in enumerate(zip(tags, sheet.places(len(tags), skip, nudge), strict=True), 1):
        while on_page < page:
            canvas.showPage()
            on_page += 1
        tag.draw(canvas, x, y, sheet.width, sheet.height)
        if marks:
            _corners(canvas, x, y, sheet.width, sheet.height)
        tell(done)
    canvas.save()
    return finish(out, f"{len(tags)} tags", museum, issued_at, "en")


def build_trial(sheet: LabelSheet, issued_at: datetime, *, museum: str = "", nudge: Nudge = (0.0, 0.0)) -> bytes:
    """One page with the outline and the place of every label, to be held against a sheet before labels are spent."""
    out = BytesIO()
    canvas = new_canvas(out, PAGE_SIZES[sheet.page])
    for index, (_, x, y) in enumerate(sheet.places(sheet.per_page(), 0, nudge), 1):
        canvas.setStrokeColor(theme.INK)
        canvas.setLineWidth(0.3)
        canvas.rect(x, y, sheet.width, sheet.height)
        canvas.setFillColor(theme.INK)
        canvas.setFont(fonts.SANS, 9)
        canvas.drawCentredString(x + sheet.width / 2, y + sheet.height / 2 - 3, str(index))
    canvas.setFont(fonts.SANS, 7)
    shift = f"shifted {nudge[0] / mm:+.1f} mm to the right, {nudge[1] / mm:+.1f} mm upwards"
    _, x, y = next(sheet.places(1, 0, nudge))
    canvas.drawString(x + 2 * mm, y + 2 * mm, f"{sheet.name}; {shift}")
    canvas.save()
    return finish(out, f"Test page, {sheet.name}", museum, issued_at, "en")


def _corners(canvas: Any, x: float, y: float, width: float, height: float) -> None:
    """Short lines inside the corners: labels without a gap have no room outside."""
    canvas.setStrokeColor(theme.INK)
    canvas.setLineWidth(0.3)
    for corner_x, inwards_x in ((x, 1), (x + width, -1)):
        for corner_y, inwards_y in ((y, 1), (y + height, -1)):
            canvas.line(corner_x, corner_y, corner_x + inwards_x * TICK, corner_y)
            canvas.line(corner_x, corner_y, corner_x, corner_y + inwards_y * TICK)
