"""Blocks to write and draw on by hand: ruled lines, and pictures printed pale."""

from dataclasses import dataclass
from io import BytesIO
from typing import Any

from PIL import Image
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Spacer, Table

from records.pdf import theme
from records.pdf.flow import Room, kept, paragraph
from records.pdf.photos import Photo, PhotoFrame
from records.pdf.pictures import bare

LINE = 9 * mm  # apart, as wide as a hand on a board needs
PALE = 0.45  # of the ink is left: pencil and pen stand out on it


class Ruled(Flowable):
    """So many lines, one beneath the other."""

    def __init__(self, width: float, count: int) -> None:
        super().__init__()
        self.width, self.count, self.height = width, count, count * LINE

    def wrap(self, *_available: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        canvas: Any = self.canv
        canvas.setStrokeColor(theme.RULE)
        canvas.setLineWidth(theme.THIN)
        for line in range(self.count):
            canvas.line(0, line * LINE, self.width, line * LINE)


@dataclass(frozen=True)
class RuledLines:
    """A question, in lighter ink what was said of it last, and lines for the answer."""

    question: str
    count: int = 3
    said: str = ""

    def flow(self, room: Room) -> list[Flowable]:
        last = [kept(paragraph(self.said, "caption"))] if self.said else []
        return [kept(paragraph(self.question, "subheading")), *last, Ruled(room.width, self.count), Spacer(0, 6)]


class PaleFrame(PhotoFrame):
    """A photograph as a ground to draw on; without one an empty frame with the name of the side."""

    def __init__(self, photo: Photo | None, width: float, limit: float, words: str) -> None:
        super().__init__(photo, width, limit, words)
        if self.jpeg is not None:
            with Image.open(BytesIO(self.jpeg)) as opened:
                picture = opened.convert("RGB")
            out = BytesIO()
            Image.blend(Image.new("RGB", picture.size, "white"), picture, PALE).save(out, "JPEG", quality=88)
            self.jpeg = out.getvalue()

    def draw(self) -> None:
        super().draw()
        self.canv.setStrokeColor(theme.RULE)
        self.canv.setLineWidth(theme.THIN)
        self.canv.rect(0, 0, self.width, self.height)


@dataclass(frozen=True)
class DrawingGround:
    """Pictures side by side to draw findings on; `sides` names the empty frames that stand where there is none."""

    photos: tuple[Photo, ...]
    sides: tuple[str, ...] = ("front, to be sketched", "back, to be sketched")

    def flow(self, room: Room) -> list[Flowable]:
        width, limit = (room.width - theme.GUTTER) / 2, room.height * 0.42
        grounds: list[tuple[Photo | None, str]] = [(photo, "") for photo in self.photos]
        grounds = grounds or [(None, side) for side in self.sides]
        cells: list[Any] = [_cell(photo, width, limit, words) for photo, words in grounds]
        cells += [""] * (len(cells) % 2)
        rows = [cells[at : at + 2] for at in range(0, len(cells), 2)]
        return [Table(rows, colWidths=[width + theme.GUTTER, width], style=bare(), splitInRow=1)]


def _cell(photo: Photo | None, width: float, limit: float, words: str) -> list[Any]:
    caption = [paragraph(photo.caption, "caption")] if photo and photo.caption else []
    return [PaleFrame(photo, width, limit, words), *caption]
