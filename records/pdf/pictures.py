"""Blocks of photographs: the cover of a paper, and a grid of details with their captions."""

from dataclasses import dataclass
from typing import Any

from reportlab.platypus import Flowable, Spacer, Table, TableStyle

from records.pdf import theme
from records.pdf.evidence import Fact
from records.pdf.facts import fact_table
from records.pdf.flow import Room, paragraph
from records.pdf.photos import Photo, PhotoFrame

PADDED = 12.0  # beneath the photograph, before a page may end beside its facts


def bare() -> TableStyle:
    """Cells that hold pictures: nothing drawn, room between the columns."""
    return TableStyle(
        [
            ("VALIGN", (0, 0), (-1, -1), "TOP"),
            ("LEFTPADDING", (0, 0), (-1, -1), 0),
            ("RIGHTPADDING", (0, 0), (-1, -1), theme.GUTTER),
            ("RIGHTPADDING", (-1, 0), (-1, -1), 0),
            ("TOPPADDING", (0, 0), (-1, -1), 0),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 8),
        ]
    )


def _captioned(photo: Photo | None, width: float, limit: float) -> list[Any]:
    return [photo.frame(width, limit), *photo.beneath(width)] if photo else [PhotoFrame(None, width, limit)]


@dataclass(frozen=True)
class Cover:
    """Photograph at a third of the width, at half of it where something is drawn on it; the facts beside it."""

    photo: Photo | None
    facts: tuple[Fact, ...]
    is_large: bool = False

    def flow(self, room: Room) -> list[Flowable]:
        third = (room.width - theme.GUTTER) / 2 if self.is_large else (room.width - 2 * theme.GUTTER) / 3
        rest = room.width - third - theme.GUTTER
        picture = _captioned(self.photo, third, room.height / 2)
        facts = fact_table(self.facts, rest, 2) if self.facts else paragraph("No facts recorded.", "body")
        if self.facts and facts.wrap(rest, room.height)[1] > room.height * 0.6:  # too long to stand beside
            return [*picture, Spacer(0, 8), fact_table(self.facts, room.width, 2)]
        if self.facts:
            facts.splitInRow = 0  # a page may end between two facts, never between a label and its value
        table = Table([[picture, facts]], colWidths=[third + theme.GUTTER, rest], style=bare())
        table.breaks_after = sum(part.wrap(third, room.height)[1] for part in picture) + PADDED
        return [table]


@dataclass(frozen=True)
class PhotoGrid:
    """Photographs side by side, each kept with its caption."""

    photos: tuple[Photo, ...]
    columns: int = 3
    empty: str = "No photographs on file."

    def flow(self, room: Room) -> list[Flowable]:
        if not self.photos:
            return [paragraph(self.empty, "body")]
        width = (room.width - (self.columns - 1) * theme.GUTTER) / self.columns
        cells: list[Any] = [_captioned(photo, width, room.height / 3) for photo in self.photos]
        cells += [""] * (-len(cells) % self.columns)
        rows = [cells[at : at + self.columns] for at in range(0, len(cells), self.columns)]
        widths = [width + theme.GUTTER] * (self.columns - 1) + [width]
        return [Table(rows, colWidths=widths, style=bare(), splitInRow=1)]
