"""The map on paper: points in vector drawing over the photograph, with its caption."""

from dataclasses import dataclass
from io import BytesIO
from typing import Any

from reportlab.lib.utils import ImageReader
from reportlab.platypus import Flowable, Spacer, Table

from records.pdf import fonts, glyphs, theme
from records.pdf.evidence import hatched_square
from records.pdf.flow import Room, paragraph
from records.pdf.photos import Photo, printable
from records.pdf.spot_map.layout import DOT, LEADING, Box, ChipPlace, Label, lay_out
from records.pdf.spot_map.model import SpotMap

SIZE = 7.6
WIDEST, PLAIN, TALLEST = 0.72, 0.42, 0.48  # of the text area
_BARE = [(f"{side}PADDING", (0, 0), (-1, -1), 0) for side in ("LEFT", "RIGHT", "TOP", "BOTTOM")]


@dataclass(frozen=True)
class SpotMapBlock:
    """The map as wide as leaves the page readable; picture and caption are never torn apart."""

    shown: SpotMap
    photo: Photo | None = None
    lead: str = ""  # a sentence that stands above the picture and stays with it

    def flow(self, room: Room) -> list[Flowable]:
        widest = WIDEST if self.photo else PLAIN
        width = min(room.width * widest, room.height * TALLEST / self.shown.ratio)
        words = f"{self.shown.title}. {self.shown.description}"
        lead = [paragraph(self.lead, "body")] if self.lead else []
        figure = [*lead, _Drawn(self.shown, self.photo, width), paragraph(words, "caption")]
        return [Table([[figure]], colWidths=[room.width], style=_BARE), Spacer(0, 8)]


def _measure(text: str) -> float:
    return glyphs.runs_width(glyphs.runs(text.replace("■", "—"), fonts.SANS), SIZE)


def _write(canvas: Any, x: float, y: float, text: str) -> None:
    """Each stretch in a face that has its characters."""
    canvas.setFillColor(theme.INK)
    for run in glyphs.runs(text, fonts.SANS):
        canvas.setFont(run.face, SIZE * run.scale)
        canvas.drawString(x, y + run.rise * SIZE, run.text)
        x += fonts.width(run.text, run.face, SIZE * run.scale)


class _Drawn(Flowable):
    """Reportlab counts upwards from the foot; the layout counts down from the top."""

    def __init__(self, shown: SpotMap, photo: Photo | None, width: float) -> None:
        super().__init__()
        self.shown = shown
        self.layout = lay_out(shown, width, SIZE, _measure, named=True)
        self.width, self.height = width, self.layout.height
        self.jpeg = printable(photo.source, width)[0] if photo else None

    def wrap(self, *_available: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        canvas: Any = self.canv
        canvas.saveState()
        self._ground(canvas)
        for label in self.layout.labels:
            self._leader(canvas, label)
        for label in self.layout.labels:
            self._dot(canvas, label)
        for label in self.layout.labels:
            self._label(canvas, label)
        for place in self.layout.chips:
            self._chip(canvas, place)
        canvas.restoreState()

    def _ground(self, canvas: Any) -> None:
        tall = self.layout.picture_height
        if self.jpeg is not None:
            canvas.drawImage(ImageReader(BytesIO(self.jpeg)), 0, self.height - tall, self.width, tall)
            return
        canvas.setStrokeColor(theme.INK)
        canvas.setLineWidth(theme.THICK)
        if self.shown.ground in ("disc", "oval"):
            canvas.ellipse(1, self.height - tall + 1, self.width - 1, self.height - 1)
        else:
            canvas.rect(1, self.height - tall + 1, self.width - 2, tall - 2)

    def _leader(self, canvas: Any, label: Label) -> None:
        if label.leader is None:
            return
        (x1, y1), (x2, y2) = label.leader
        for colour, wide in ((theme.WHITE, 1.8), (theme.INK, 0.6)):
            canvas.setStrokeColor(colour)
            canvas.setLineWidth(wide)
            canvas.line(x1, self.height - y1, x2, self.height - y2)

    def _dot(self, canvas: Any, label: Label) -> None:
        (x, y), half = label.at, SIZE * DOT
        y = self.height - y
        if label.spot.is_least:
            for colour, wide in ((theme.WHITE, 2.2), (theme.INK, 0.9)):
                canvas.setStrokeColor(colour)
                canvas.setLineWidth(wide)
                canvas.circle(x, y, half * 1.7, stroke=1, fill=0)
        self._solid(canvas, x, y, half, square=label.spot.is_below)

    def _solid(self, canvas: Any, x: float, y: float, half: float, *, square: bool) -> None:
        canvas.setFillColor(theme.INK)
        canvas.setStrokeColor(theme.WHITE)
        canvas.setLineWidth(0.8)
        if square:
            canvas.rect(x - half, y - half, 2 * half, 2 * half, stroke=1, fill=1)
        else:
            canvas.circle(x, y, half, stroke=1, fill=1)

    def _label(self, canvas: Any, label: Label) -> None:
        left, top, _, bottom = label.box
        self._box(canvas, label.box)
        text, x = label.text, left + SIZE * 0.35
        base = self.height - (top + bottom) / 2 - SIZE * 0.35
        canvas.setFillColor(theme.INK)
        if text.startswith("■ "):
            canvas.rect(x, base + 0.2, SIZE * 0.55, SIZE * 0.55, stroke=0, fill=1)
            text, x = text[2:], x + _measure("■ ")
        _write(canvas, x, base, text)

    def _box(self, canvas: Any, box: Box) -> None:
        left, top, right, bottom = box
        canvas.setFillColor(theme.WHITE)
        canvas.setStrokeColor(theme.INK)
        canvas.setLineWidth(theme.THIN)
        canvas.rect(left, self.height - bottom, right - left, bottom - top, stroke=1, fill=1)

    def _chip(self, canvas: Any, place: ChipPlace) -> None:
        left, top, right, bottom = place.sign
        x, y = (left + right) / 2, self.height - (top + bottom) / 2
        if place.chip.kind in ("measured", "below"):
            self._solid(canvas, x, y, SIZE * DOT, square=place.chip.kind == "below")
        elif place.chip.kind == "calculated":
            hatched_square(canvas, left, self.height - bottom, bottom - top)
        else:
            canvas.setStrokeColor(theme.INK)
            canvas.setDash(2, 1.5)
            canvas.rect(left, self.height - bottom, right - left, bottom - top, stroke=1, fill=0)
            canvas.setDash()
        for row, words in enumerate(place.lines):
            _write(canvas, place.text_at[0], self.height - place.text_at[1] - row * SIZE * LEADING, words)
