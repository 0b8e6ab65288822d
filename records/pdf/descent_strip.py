"""The line of descent as a strip: pieces with polarity, arrows that say what was done, '?' where unknown."""

from dataclasses import dataclass
from typing import Any, Literal

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Spacer, Table, TableStyle

from records.pdf import fonts, glyphs, theme
from records.pdf.flow import Room, kept, paragraph

ARROW = 15 * mm
LEAST_PIECE = 16 * mm
GAP = 6.0
WIDTHS = (48 * mm, 38 * mm, 30 * mm, 26 * mm)  # of a piece at most: the widest with which the chain fits one line
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
        self.width, self.height = ARROW - 4 * mm, 9.0

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


def _name(piece: Piece) -> str:
    name = piece.number if piece.known else f"[{piece.number}]"
    return f"{name} ({piece.polarity})" if piece.polarity else name


def _piece_cell(piece: Piece) -> list[Any]:
    return [paragraph(_name(piece), "number"), paragraph(piece.what, "caption")]


def _link_cell(link: Link) -> list[Any]:
    return [Arrow(link), paragraph(_words(link), "caption")]


def _words(link: Link) -> str:
    return link.words or ("" if link.known else "not documented")


@dataclass(frozen=True)
class DescentStrip:
    """Pieces and links in turn, a piece first and last; a long chain runs on over several lines."""

    chain: tuple[Piece | Link, ...]
    caption: str = ""

    def flow(self, room: Room) -> list[Flowable]:
        answer: list[Any] = [kept(paragraph(self.caption, "subheading"))] if self.caption else []
        most = next((most for most in WIDTHS if sum(_width(p, most) for p in self.chain) <= room.width), WIDTHS[0])
        lines = [_line(line, most) for line in self._lines(room.width, most)]
        return [*answer, *(kept(line) for line in lines[:-1]), *lines[-1:], Spacer(0, 6)]

    def _lines(self, width: float, most: float) -> list[list[Piece | Link]]:
        """The chain cut into lines that fit; a line that runs on ends with its arrow."""
        lines: list[list[Piece | Link]] = [[]]
        used = 0.0
        for part in self.chain:
            wide = _width(part, most)
            follows = ARROW if isinstance(part, Piece) and part is not self.chain[-1] else 0.0
            if lines[-1] and isinstance(part, Piece) and used + wide + follows > width:
                lines.append([])
                used = 0.0
            lines[-1].append(part)
            used += wide
        return lines


def _width(part: Piece | Link, most: float) -> float:
    if isinstance(part, Link):
        return max(ARROW, GAP + max(_caption_width(word) for word in _words(part).split(" ")))
    name = glyphs.runs_width(glyphs.runs(_name(part), fonts.SANS_BOLD), theme.style("number").fontSize)
    wish = max(name, _caption_width(part.what), LEAST_PIECE) + 9
    return max(min(wish, most), min(name + 9, WIDTHS[0]))


def _caption_width(text: str) -> float:
    return glyphs.runs_width(glyphs.runs(text, fonts.SANS), theme.SMALL_SIZE)


def _line(line: list[Piece | Link], most: float) -> Any:
    cells = [_piece_cell(part) if isinstance(part, Piece) else _link_cell(part) for part in line]
    style = TableStyle(
        [
            ("VALIGN", (0, 0), (-1, -1), "TOP"),
            ("LEFTPADDING", (0, 0), (-1, -1), 0),
            ("RIGHTPADDING", (0, 0), (-1, -1), GAP),
            ("TOPPADDING", (0, 0), (-1, -1), 3),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 3),
        ]
    )
    return Table([cells], colWidths=[_width(part, most) for part in line], style=style, hAlign="LEFT")
