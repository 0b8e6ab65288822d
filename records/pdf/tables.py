"""Tables of figures: units in the heading, figures right-aligned and tabular, the heading repeated."""

from dataclasses import dataclass, replace
from typing import Any, Literal

from reportlab.platypus import Flowable, Paragraph, Spacer, Table, TableStyle

from records.pdf import fonts, glyphs, theme
from records.pdf.column_widths import ColumnText, column_widths
from records.pdf.evidence import swatch_markup
from records.pdf.flow import Room, kept, paragraph
from records.wording.binding import bound

PADDING = 5.0
EMPTY_CELL = "–"
KEY = "calculated, not measured"


@dataclass(frozen=True)
class Column:
    """A column; figures are right-aligned, a wholly calculated column says so in its heading."""

    heading: str
    unit: str = ""
    align: Literal["left", "right"] = "left"
    calculated: bool = False
    empty: str = EMPTY_CELL
    weight: float = 1.0  # of the room for long texts


@dataclass(frozen=True)
class Cell:
    """A cell that needs more than its text: calculated, or standing out as a total."""

    text: str
    calculated: bool = False
    strong: bool = False


Row = tuple[str | Cell, ...]


def _swatch(calculated: bool, style: Any) -> str:
    return swatch_markup("calculated" if calculated else "measured", style.fontName, style.fontSize)


def _as_cell(value: str | Cell) -> Cell:
    """With what must stand on one line bound, so that the widths are reckoned with it."""
    return replace(value, text=bound(value.text)) if isinstance(value, Cell) else Cell(bound(value))


def _cell(value: str | Cell, column: Column) -> Any:
    cell = _as_cell(value)
    style = theme.style("cell_right" if column.align == "right" else "cell")
    face = fonts.SANS_BOLD if cell.strong else style.fontName
    text = glyphs.markup(cell.text.strip() or column.empty, face, style.fontSize)
    text = f'<font name="{face}">{text}</font>' if cell.strong else text
    return Paragraph(_swatch(cell.calculated, style) + text, style)


def _heading(column: Column) -> Any:
    style = theme.style("column_right" if column.align == "right" else "column")
    text = glyphs.markup(column.heading, style.fontName, style.fontSize)
    extra = [part for part in (column.unit, "calculated" if column.calculated else "") if part]
    if extra:
        colour = theme.LIGHTER.hexval().replace("0x", "#")
        words = glyphs.markup(", ".join(extra), fonts.SANS, style.fontSize)
        text += f'<br/><font name="{fonts.SANS}" color="{colour}">{words}</font>'
    return Paragraph(_swatch(column.calculated, style) + text, style)


def _text(index: int, column: Column, rows: tuple[Row, ...]) -> ColumnText:
    cells = [_as_cell(row[index]) for row in rows]
    return ColumnText(
        heading=(column.heading, column.unit, "calculated" if column.calculated else ""),
        cells=tuple(cell.text for cell in cells),
        swatch=column.calculated or any(cell.calculated for cell in cells),
        unbroken=column.align == "right",
        weight=column.weight,
    )


def _rules(last: int, note: bool) -> TableStyle:
    """Thin rules; the last two rows and the note beneath them never come apart."""
    beneath = [
        ("SPAN", (0, last + 1), (-1, last + 1)),
        ("LEFTPADDING", (0, last + 1), (-1, last + 1), 0),
        ("RIGHTPADDING", (0, last + 1), (-1, last + 1), 0),
        ("TOPPADDING", (0, last + 1), (-1, last + 1), 3),
    ]
    return TableStyle(
        [
            ("LINEABOVE", (0, 0), (-1, 0), theme.THICK, theme.INK),
            ("LINEBELOW", (0, 0), (-1, 0), theme.THIN, theme.INK),
            ("LINEBELOW", (0, last), (-1, last), theme.THICK, theme.INK),
            ("NOSPLIT", (0, max(1, last - 1)), (-1, -1)),
            ("VALIGN", (0, 0), (-1, 0), "BOTTOM"),
            ("VALIGN", (0, 1), (-1, -1), "TOP"),
            ("LEFTPADDING", (0, 0), (-1, -1), PADDING),
            ("RIGHTPADDING", (0, 0), (-1, -1), PADDING),
            ("LEFTPADDING", (0, 0), (0, -1), 0),
            ("RIGHTPADDING", (-1, 0), (-1, -1), 0),
            ("TOPPADDING", (0, 0), (-1, -1), 2.2),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 2.8),
            *(beneath if note else ()),
        ]
    )


@dataclass(frozen=True)
class FigureTable:
    """A table with an optional caption above and note below."""

    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    caption: str = ""
    note: str = ""
    empty: str = "Nothing recorded."

    def flow(self, room: Room) -> list[Flowable]:
        caption = [kept(paragraph(self.caption, "subheading"))] if self.caption else []
        if not self.rows:
            return [*caption, paragraph(self.empty, "body")]
        body = [[_cell(v, c) for v, c in zip(row, self.columns, strict=True)] for row in self.rows]
        below = self._below()
        note: list[list[Any]] = [[below, *[""] * (len(self.columns) - 1)]] if below else []
        table = Table(
            [[_heading(c) for c in self.columns], *body, *note],
            colWidths=self._widths(room.width),
            repeatRows=1,
            splitInRow=1,
            hAlign="LEFT",
            style=_rules(len(body), bool(below)),
        )
        return [*caption, table, Spacer(0, 9)]

    def _widths(self, width: float) -> list[float]:
        texts = [_text(index, column, self.rows) for index, column in enumerate(self.columns)]
        return column_widths(texts, width, 2 * PADDING)

    def _below(self) -> list[Flowable]:
        marked = any(_as_cell(v).calculated for row in self.rows for v in row)
        key = [paragraph(KEY, "caption", _swatch(True, theme.style("caption")))] if marked else []
        return key + ([paragraph(self.note, "caption")] if self.note else [])
