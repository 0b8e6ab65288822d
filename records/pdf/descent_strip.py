"""The line of descent as a strip: pieces with polarity, arrows that say what was done, '?' where unknown."""

from dataclasses import dataclass
from typing import Any, Literal

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Spacer, Table, TableStyle

from records.pdf import fonts, theme
from records.pdf.flow import Room, kept, paragraph

ARROW = 17 * mm
LEAST_PIECE = 27 * mm
UNKNOWN = "?"


@dataclass(frozen=True)
class Piece:
    """A thing in the chain; a missing one has known=False and is drawn in brackets."""

    number: str
    what: str = ""
    polarity: Literal["+", "−", ""] = ""
    known: bool = True


@dataclass(frozen=True)
class Link:
    """What was transferred to what; an undocumented step is a dashed arrow with a question mark."""

    words: str = ""
    known: bool = True


class Arrow(Flowable):
    """A thin arrow, dashed when the step is unknown."""

    def __init__(self, link: Link) -> None:
        super().__init__()
        self.link = link
        self.width, self.height = ARROW - 3 * mm, 9.0

    def wrap(self, *_available: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        canvas: Any = self.canv
        canvas.setStrokeColor(theme.INK)
        canvas.setFillColor(theme.INK)
        canvas.setLineWidth(0.8)
        if not self.link.known:
            canvas.setDash(2, 2)
        canvas.line(0, 4, self.width - 4, 4)
        canvas.setDash()
        head = canvas.beginPath()
        head.moveTo(self.width, 4)
        head.lineTo(self.width - 5, 6.4)
        head.lineTo(self.width - 5, 1.6)
        head.close()
        canvas.drawPath(head, stroke=0, fill=1)
        if not self.link.known:
            canvas.setFillColor(theme.WHITE)
            canvas.rect(self.width / 2 - 7, 0, 12, 9, stroke=0, fill=1)
            canvas.setFillColor(theme.INK)
            canvas.setFont(fonts.SANS_BOLD, 10)
            canvas.drawCentredString(self.width / 2 - 1, 0.8, UNKNOWN)


def _piece_cell(piece: Piece) -> list[Any]:
    name = piece.number if piece.known else f"[{piece.number}]"
    sign = f" ({piece.polarity})" if piece.polarity else ""
    return [paragraph(name + sign, "number"), paragraph(piece.what, "caption")]


def _link_cell(link: Link) -> list[Any]:
    words = link.words or ("" if link.known else "not documented")
    return [Arrow(link), paragraph(words, "caption")]


@dataclass(frozen=True)
class DescentStrip:
    """Pieces and links in turn, a piece first and last; a long chain runs on over several lines."""

    chain: tuple[Piece | Link, ...]
    caption: str = ""

    def flow(self, room: Room) -> list[Flowable]:
        pieces = (len(self.chain) + 1) // 2
        in_line = max(1, min(pieces, int((room.width + ARROW) // (LEAST_PIECE + ARROW))))
        lines = [self.chain[at : at + 2 * in_line] for at in range(0, len(self.chain), 2 * in_line)]
        answer: list[Any] = [kept(paragraph(self.caption, "subheading"))] if self.caption else []
        return [*answer, *(self._line(line, in_line, room.width) for line in lines), Spacer(0, 6)]

    def _line(self, line: tuple[Piece | Link, ...], in_line: int, width: float) -> Any:
        piece = (width - ARROW * (in_line - (len(line) % 2))) / in_line
        piece = min(piece, 60 * mm)
        cells = [_piece_cell(part) if isinstance(part, Piece) else _link_cell(part) for part in line]
        widths = [piece if isinstance(part, Piece) else ARROW for part in line]
        style = TableStyle(
            [
                ("VALIGN", (0, 0), (-1, -1), "TOP"),
                ("LEFTPADDING", (0, 0), (-1, -1), 0),
                ("RIGHTPADDING", (0, 0), (-1, -1), 4),
                ("TOPPADDING", (0, 0), (-1, -1), 3),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 3),
            ]
        )
        return Table([cells], colWidths=widths, style=style, hAlign="LEFT")
