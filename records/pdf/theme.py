"""Colours, sizes and paragraph styles of the papers: paper, ink and a little copper."""

from functools import cache

from reportlab.lib.colors import Color, HexColor
from reportlab.lib.enums import TA_CENTER, TA_RIGHT
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm

from records.pdf import fonts

MARGIN = 20 * mm
HEAD_ROOM = 12 * mm  # between the margin and the first line of text
FOOT_ROOM = 10 * mm
GUTTER = 6 * mm

INK: Color = HexColor("#1F1B16")
LIGHTER: Color = HexColor("#5C544A")
RULE: Color = HexColor("#8A8175")  # darker than on the screen: a photocopy must keep it
FAINT: Color = HexColor("#CFC8BC")  # grid lines, which may fade in a photocopy
COPPER: Color = HexColor("#8F4318")
WHITE: Color = HexColor("#FFFFFF")

THIN, THICK = 0.4, 1.1
BODY_SIZE, SMALL_SIZE = 9.5, 7.8

_SANS, _BOLD, _SERIF, _SERIF_BOLD = fonts.SANS, fonts.SANS_BOLD, fonts.SERIF, fonts.SERIF_BOLD

# name: (face, size, leading, colour, space before, space after)
_SPEC: dict[str, tuple[str, float, float, Color, float, float]] = {
    "kind": (_BOLD, 9, 12, COPPER, 0, 3),
    "appendix": (_BOLD, 9, 12, COPPER, 26, 0),
    "title": (_SERIF_BOLD, 21, 25, INK, 0, 5),
    "summary": (_SERIF, 11.5, 16.5, INK, 0, 12),
    "heading": (_SERIF_BOLD, 13.5, 17, INK, 15, 5),
    "subheading": (_BOLD, 9.5, 13, INK, 9, 3),
    "body": (_SANS, BODY_SIZE, 13.6, INK, 0, 6),
    "caption": (_SANS, SMALL_SIZE, 10.4, LIGHTER, 3, 0),
    "fact_label": (_SANS, SMALL_SIZE, 10.4, LIGHTER, 0, 0),
    "fact": (_SANS, BODY_SIZE, 12.6, INK, 0, 0),
    "column": (_BOLD, SMALL_SIZE, 10, INK, 0, 0),
    "cell": (_SANS, 8.8, 11.4, INK, 0, 0),
    "number": (_BOLD, 9.5, 12, INK, 0, 0),
    "formula": (_SERIF, 12, 17, INK, 4, 4),
    "warning": (_BOLD, 10, 13.5, INK, 0, 0),
    "notice": (_BOLD, 12.5, 16, INK, 0, 0),
}
_ALIGNED: dict[str, tuple[str, int]] = {
    "column_right": ("column", TA_RIGHT),
    "cell_right": ("cell", TA_RIGHT),
    "formula_centre": ("formula", TA_CENTER),
    "caption_centre": ("caption", TA_CENTER),
    "number_centre": ("number", TA_CENTER),
}


@cache
def style(name: str) -> ParagraphStyle:
    """One of the named styles; the aligned variants end in _right or _centre."""
    base, alignment = _ALIGNED.get(name, (name, 0))
    face, size, leading, colour, before, after = _SPEC[base]
    return ParagraphStyle(
        name,
        fontName=face,
        bulletFontName=face,
        fontSize=size,
        leading=leading,
        textColor=colour,
        spaceBefore=before,
        spaceAfter=after,
        alignment=alignment,
        splitLongWords=1,
        allowWidows=0,
        allowOrphans=0,
    )
