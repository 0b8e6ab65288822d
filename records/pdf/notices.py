"""Boxes that must be read: a caution beside a step, and a notice that limits the use of a thing."""

from dataclasses import dataclass
from typing import Any

from reportlab.platypus import Flowable, Spacer, Table, TableStyle

from records.pdf import theme
from records.pdf.flow import Room, paragraph


def _boxed(content: list[Any], width: float, line: float) -> Any:
    style = TableStyle(
        [
            ("BOX", (0, 0), (-1, -1), line, theme.INK),
            ("LEFTPADDING", (0, 0), (-1, -1), 9),
            ("RIGHTPADDING", (0, 0), (-1, -1), 9),
            ("TOPPADDING", (0, 0), (-1, -1), 6),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 7),
        ]
    )
    return Table([[content]], colWidths=[width], style=style, spaceBefore=4, spaceAfter=9, splitInRow=1)


@dataclass(frozen=True)
class Caution:
    """A ruled box: the word, what to mind, and to whose rules it defers."""

    text: str
    word: str = "Caution"

    def flow(self, room: Room) -> list[Flowable]:
        content = [paragraph(f"▲ {self.word}", "warning"), Spacer(0, 2), paragraph(self.text, "fact")]
        return [_boxed(content, room.width, theme.THIN * 2)]


@dataclass(frozen=True)
class Notice:
    """A heavier box for what limits a thing: unmarked copy, recorded afterwards, limits of a concession."""

    text: str
    detail: str = ""

    def flow(self, room: Room) -> list[Flowable]:
        content = [paragraph(f"■ {self.text}", "notice")]
        if self.detail:
            content += [Spacer(0, 2), paragraph(self.detail, "fact")]
        return [_boxed(content, room.width, 2.2)]
