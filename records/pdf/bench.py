"""Blocks for a sheet that is written on at the bench: boxes for wet hands, ticks, and a head with its code."""

from dataclasses import dataclass
from typing import Any

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph, Spacer, Table, TableStyle

from records.pdf import glyphs, theme
from records.pdf.codes import QrCode
from records.pdf.evidence import Fact
from records.pdf.facts import fact_table
from records.pdf.flow import Room, kept, paragraph
from records.pdf.photos import Photo, PhotoFrame

LEAST_ROW = 9 * mm  # what a gloved hand can write in
ROW = 10 * mm
CODE_SIDE = 27 * mm
TICK_SIDE = 4.5 * mm


@dataclass(frozen=True)
class BenchHead:
    """Photograph, facts and the code that leads to the record, side by side; its number stands in clear below."""

    photo: Photo | None
    facts: tuple[Fact, ...]
    address: str
    number: str
    opens: str = "opens the run"

    def flow(self, room: Room) -> list[Flowable]:
        picture, code = room.width * 0.22, CODE_SIDE + 2 * mm
        rest = room.width - picture - code - 2 * theme.GUTTER
        cells = [
            PhotoFrame(self.photo, picture, room.height / 5),
            fact_table(self.facts, rest, 2),
            [QrCode(self.address, CODE_SIDE), paragraph(self.number, "number_centre"),
             paragraph(self.opens, "caption_centre")],
        ]  # fmt: skip
        widths = [picture + theme.GUTTER, rest + theme.GUTTER, code]
        return [Table([cells], colWidths=widths, style=_bare()), Spacer(0, 2)]


def _bare() -> TableStyle:
    return TableStyle(
        [
            ("VALIGN", (0, 0), (-1, -1), "TOP"),
            ("LEFTPADDING", (0, 0), (-1, -1), 0),
            ("RIGHTPADDING", (0, 0), (-1, -1), 0),
            ("TOPPADDING", (0, 0), (-1, -1), 0),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 4),
        ]
    )


class TickBox(Flowable):
    """A square to tick."""

    def wrap(self, *_available: float) -> tuple[float, float]:
        return TICK_SIDE, TICK_SIDE

    def draw(self) -> None:
        canvas: Any = self.canv
        canvas.setStrokeColor(theme.INK)
        canvas.setLineWidth(theme.THIN * 2)
        canvas.rect(0, 0, TICK_SIDE, TICK_SIDE)


@dataclass(frozen=True)
class TickList:
    """What is looked at before the start, each with a box, in two columns."""

    items: tuple[str, ...]

    def flow(self, room: Room) -> list[Flowable]:
        depth = -(-len(self.items) // 2)
        cells = [[TickBox(), paragraph(words, "fact")] for words in self.items]
        cells += [["", ""]] * (2 * depth - len(cells))
        rows = [cells[row] + cells[row + depth] for row in range(depth)]
        tick, half = TICK_SIDE + 5, room.width / 2
        style = TableStyle(
            [
                ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
                ("LEFTPADDING", (0, 0), (-1, -1), 0),
                ("RIGHTPADDING", (0, 0), (-1, -1), 4),
                ("TOPPADDING", (0, 0), (-1, -1), 2),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 2),
            ]
        )
        return [Table(rows, colWidths=[tick, half - tick, tick, half - tick], style=style), Spacer(0, 6)]


@dataclass(frozen=True)
class BoxTable:
    """Planned figures at the left, empty boxes to write in at the right; the heading is repeated on each page.

    `planned` and `boxes` are (heading, unit, width in mm); widths are spread over the room. Of each row the first
    cell may have a second line, in lighter ink.
    """

    planned: tuple[tuple[str, str, float], ...]
    boxes: tuple[tuple[str, str, float], ...]
    rows: tuple[tuple[str, ...], ...]
    caption: str = ""
    note: str = ""
    row_height: float = ROW

    def flow(self, room: Room) -> list[Flowable]:
        columns = (*self.planned, *self.boxes)
        whole = sum(width for *_, width in columns)
        widths = [width / whole * room.width for *_, width in columns]
        heading = [_heading(title, unit, right=0 < index < len(self.planned))
                   for index, (title, unit, _) in enumerate(columns)]  # fmt: skip
        body = [[*(_planned(text, right=index > 0) for index, text in enumerate(row)), *[""] * len(self.boxes)]
                for row in self.rows]  # fmt: skip
        heights = [self._height(row, widths) for row in body]
        table = Table([heading, *body], colWidths=widths, rowHeights=[None, *heights], repeatRows=1,
                      style=self._rules())  # fmt: skip
        above = [kept(paragraph(self.caption, "subheading"))] if self.caption else []
        return [*above, table, *([paragraph(self.note, "caption")] if self.note else []), Spacer(0, 8)]

    def _height(self, row: list[Any], widths: list[float]) -> float:
        """Room to write in, or more where the words before it need more."""
        needed = [sum(part.wrap(width - 6, 1e6)[1] for part in cell) + 3
                  for cell, width in zip(row, widths, strict=True) if cell]  # fmt: skip
        return max(self.row_height, *needed) if needed else self.row_height

    def _rules(self) -> TableStyle:
        first = len(self.planned)
        return TableStyle(
            [
                ("LINEABOVE", (0, 0), (-1, 0), theme.THICK, theme.INK),
                ("LINEBELOW", (0, 0), (-1, 0), theme.THIN, theme.INK),
                ("LINEBELOW", (0, 1), (first - 1, -1), theme.THIN, theme.FAINT),
                ("BOX", (first, 1), (-1, -1), theme.THIN * 2, theme.INK),
                ("INNERGRID", (first, 1), (-1, -1), theme.THIN * 2, theme.INK),
                ("VALIGN", (0, 0), (-1, 0), "BOTTOM"),
                ("VALIGN", (0, 1), (-1, -1), "MIDDLE"),
                ("LEFTPADDING", (0, 0), (-1, -1), 3),
                ("LEFTPADDING", (0, 0), (0, -1), 0),
                ("LEFTPADDING", (first, 0), (-1, 0), 6),
                ("RIGHTPADDING", (0, 0), (-1, -1), 3),
                ("TOPPADDING", (0, 0), (-1, -1), 1),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 1.5),
            ]
        )


def _heading(title: str, unit: str, right: bool) -> Any:
    style = theme.style("column_right" if right else "column")
    text = glyphs.markup(title, style.fontName, style.fontSize)
    if unit:
        colour = theme.LIGHTER.hexval().replace("0x", "#")
        text += f'<br/><font color="{colour}">{glyphs.markup(unit, style.fontName, style.fontSize)}</font>'
    return Paragraph(text, style)


def _planned(text: str, right: bool) -> Any:
    first, _, second = text.partition("\n")
    lines = [paragraph(first, "cell_right" if right else "cell")]
    return [*lines, paragraph(second, "fact_label")] if second else lines
