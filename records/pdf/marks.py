"""A mark on a copy: how it reads, where it is, its size, and the photograph that proves it."""

from dataclasses import dataclass
from typing import Any

from reportlab.platypus import Flowable, Spacer, Table, TableStyle

from records.pdf import theme
from records.pdf.evidence import Fact
from records.pdf.facts import fact_table
from records.pdf.flow import Room, paragraph
from records.pdf.photos import Photo, PhotoFrame


@dataclass(frozen=True)
class MarkBlock:
    """The words of the mark, its facts (face, position, method, letter height …) and a photograph."""

    text: str
    facts: tuple[Fact, ...]
    photo: Photo | None = None
    judgement: str = ""

    def flow(self, room: Room) -> list[Flowable]:
        quarter = room.width / 4
        picture: list[Any] = [PhotoFrame(self.photo, quarter, room.height / 3, "No photograph of the mark")]
        if self.photo and self.photo.caption:
            picture.append(paragraph(self.photo.caption, "caption"))
        rest = room.width - quarter - theme.GUTTER
        words: list[Any] = [
            paragraph("The mark reads", "fact_label"),
            paragraph(self.text, "notice"),
            Spacer(0, 4),
        ]
        if self.facts:
            words.append(fact_table(self.facts, rest, 2))
        if self.judgement:
            words.append(paragraph(self.judgement, "fact"))
        style = TableStyle(
            [
                ("VALIGN", (0, 0), (-1, -1), "TOP"),
                ("LEFTPADDING", (0, 0), (-1, -1), 0),
                ("RIGHTPADDING", (0, 0), (0, -1), theme.GUTTER),
                ("RIGHTPADDING", (1, 0), (-1, -1), 0),
                ("TOPPADDING", (0, 0), (-1, -1), 4),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 6),
            ]
        )
        return [Table([[picture, words]], colWidths=[quarter + theme.GUTTER, rest], style=style, splitInRow=1)]
