"""Measured stands upright; all else says by a word what it is, a calculated value also by a hatch."""

import math
from dataclasses import dataclass
from typing import Any, Literal

from reportlab.pdfgen.canvas import Canvas

from records.pdf import fonts, glyphs, theme
from records.wording.binding import bound

Kind = Literal["measured", "calculated", "estimated", "quoted", "unknown"]
SWATCH = 6.4  # points
NO_BREAK = "\u00a0"


@dataclass(frozen=True)
class Fact:
    """A label with its value; the unit is printed in lighter ink."""

    label: str
    value: str
    unit: str = ""
    kind: Kind = "measured"


def hatched_square(canvas: Canvas, x: float, y: float, side: float = SWATCH) -> None:
    """The sign for a calculated value, the same that fills the area under a calculated curve."""
    canvas.saveState()
    canvas.setStrokeColor(theme.INK)
    canvas.setLineWidth(0.45)
    canvas.rect(x, y, side, side, stroke=1, fill=0)
    for step in (0.33, 0.66, 1.0):
        canvas.line(x, y + side * step, x + side * step, y)
    for step in (0.33, 0.66):
        canvas.line(x + side * step, y + side, x + side, y + side * step)
    canvas.restoreState()


def draw_swatch(canvas: Any, _kind: str, _label: str) -> None:
    """What a paragraph calls where its markup says <onDraw name="swatch">."""
    place = canvas._curr_tx_info
    hatched_square(canvas, place["cur_x"], place["cur_y"])


class EvidenceCanvas(Canvas):
    """A canvas that can set the swatch inside a line of text."""

    def __init__(self, *args: Any, **options: Any) -> None:
        super().__init__(*args, **options)
        self.setNamedCB("swatch", draw_swatch)


def swatch_markup(kind: Kind, face: str, size: float) -> str:
    """The swatch in front of a calculated value; no-break spaces keep its place in the line."""
    if kind != "calculated":
        return ""
    spaces = math.ceil((SWATCH + 2.6) / fonts.width(NO_BREAK, face, size))
    return '<onDraw name="swatch" label="calculated"/>' + NO_BREAK * spaces


def value_markup(value: str, unit: str, kind: Kind, face: str, size: float) -> str:
    """Value, unit in lighter ink after a thin space, and the word where it was not measured."""
    text = glyphs.markup(bound(value), face, size)
    lighter = f'<font color="{theme.LIGHTER.hexval().replace("0x", "#")}">'
    if unit:
        space = "" if unit == "°" else glyphs.markup("\u2009", face, size)
        text += f"{space}{lighter}{glyphs.markup(unit, face, size)}</font>"
    if kind != "measured":
        text += f' {lighter}<font size="{theme.SMALL_SIZE}">{kind}</font></font>'
    return swatch_markup(kind, face, size) + text
