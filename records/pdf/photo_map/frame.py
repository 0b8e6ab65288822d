"""The photograph with its shapes, drawn as vectors over it, so that every size of paper keeps them sharp."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

from reportlab.platypus import Flowable, Table

from records.annotating.labels import Box, Line, leaders, places
from records.annotating.shapes import corners
from records.pdf import fonts, theme
from records.pdf.flow import paragraph
from records.pdf.photo_map import patterns
from records.pdf.photos import Photo, PhotoFrame

NUMBER_SIZE = 8.4
POINT = 3.2
OUTLINE = ((theme.WHITE, 2.6), (theme.INK, 1.0))
KEY = (24.0, 12.0)


@dataclass(frozen=True)
class MapShape:
    """What a finding covers, in pixels of the upright full-size picture."""

    kind: str  # point, rectangle, polygon, line
    points: tuple[tuple[float, float], ...]
    number: str
    pattern: str = "plain"

    @property
    def is_open(self) -> bool:
        """Points and lines enclose nothing that a pattern could fill."""
        return self.kind in {"point", "line"}


@dataclass(frozen=True)
class MappedPhoto(Photo):
    """A photograph, or the piece of one that lies in `window`, with shapes and the legend of their patterns."""

    window: Box = (0.0, 0.0, 1.0, 1.0)  # left, top, right, bottom in pixels of the upright full-size picture
    shapes: tuple[MapShape, ...] = ()
    legend: tuple[tuple[str, str], ...] = ()  # (pattern, its words)

    def frame(self, width: float, limit: float) -> PhotoFrame:
        return MappedFrame(self, width, limit)

    def beneath(self, width: float) -> list[Flowable]:
        keys = [[_Key(pattern), paragraph(words, "caption")] for pattern, words in self.legend]
        style = [("VALIGN", (0, 0), (-1, -1), "MIDDLE"), *((f"{side}PADDING", (0, 0), (-1, -1), 0) for side in
                 ("LEFT", "RIGHT", "TOP", "BOTTOM")), ("BOTTOMPADDING", (0, 0), (-1, -1), 2.5)]  # fmt: skip
        legend = [Table(keys, colWidths=[KEY[0] + 6, width - KEY[0] - 6], hAlign="LEFT", style=style)] if keys else []
        return [*super().beneath(width), *legend]


class MappedFrame(PhotoFrame):
    """Shapes first, then the numbers over all of them."""

    def __init__(self, photo: MappedPhoto, width: float, limit: float) -> None:
        super().__init__(photo, width, limit)
        self.photo = photo

    def _at(self, point: tuple[float, float]) -> tuple[float, float]:
        left, top, right, bottom = self.photo.window
        x = (point[0] - left) / (right - left) * self.width
        return x, self.height - (point[1] - top) / (bottom - top) * self.height

    def draw(self) -> None:
        super().draw()
        canvas: Any = self.canv
        with _clipped(canvas, _rectangle(canvas, (0, 0, self.width, self.height))):
            for shape in self.photo.shapes:
                self._shape(canvas, shape)
            self._numbers(canvas)

    def _numbers(self, canvas: Any) -> None:
        shapes = self.photo.shapes
        sizes = [(fonts.width(shape.number, fonts.SANS_BOLD, NUMBER_SIZE) + 4, NUMBER_SIZE + 2) for shape in shapes]
        boxes = [self._box(shape) for shape in shapes]
        found = places(boxes, sizes, (self.width, self.height))
        for line in leaders(found, [self._outline(shape) for shape in shapes], boxes):
            if line:
                _leader(canvas, line)
        for shape, place in zip(shapes, found, strict=True):
            _number(canvas, shape.number, place)

    def _outline(self, shape: MapShape) -> list[tuple[float, float]]:
        return [self._at(corner) for corner in corners(shape.kind, shape.points)]

    def _box(self, shape: MapShape) -> Box:
        at = [self._at(point) for point in shape.points]
        room = POINT + 1 if shape.kind == "point" else 0
        across, down = [x for x, _ in at], [y for _, y in at]
        return min(across) - room, min(down) - room, max(across) + room, max(down) + room

    def _shape(self, canvas: Any, shape: MapShape) -> None:
        if shape.kind == "point":
            return _point(canvas, *self._at(shape.points[0]))
        path = canvas.beginPath()
        first, *rest = self._outline(shape)
        path.moveTo(*first)
        for corner in rest:
            path.lineTo(*corner)
        if not shape.is_open:
            path.close()
            with _clipped(canvas, path):
                patterns.fill(canvas, shape.pattern, self._box(shape))
        for colour, wide in OUTLINE:
            canvas.setStrokeColor(colour)
            canvas.setLineWidth(wide)
            canvas.drawPath(path, stroke=1, fill=0)
        return None


class _Key(Flowable):
    """A pattern of the legend."""

    def __init__(self, pattern: str) -> None:
        super().__init__()
        self.pattern = pattern
        self.width, self.height = KEY

    def wrap(self, *_available: float) -> tuple[float, float]:
        return KEY

    def draw(self) -> None:
        box = (0.5, 0.5, KEY[0] - 0.5, KEY[1] - 0.5)
        with _clipped(self.canv, _rectangle(self.canv, box)):
            patterns.fill(self.canv, self.pattern, box)
        self.canv.setStrokeColor(theme.INK)
        self.canv.setLineWidth(OUTLINE[1][1])
        self.canv.drawPath(_rectangle(self.canv, box), stroke=1, fill=0)


@contextmanager
def _clipped(canvas: Any, path: Any) -> Iterator[None]:
    canvas.saveState()
    canvas.clipPath(path, stroke=0, fill=0)
    yield
    canvas.restoreState()


def _rectangle(canvas: Any, box: Box) -> Any:
    path = canvas.beginPath()
    path.rect(box[0], box[1], box[2] - box[0], box[3] - box[1])
    return path


def _point(canvas: Any, x: float, y: float) -> None:
    for colour, wide in OUTLINE:
        canvas.setStrokeColor(colour)
        canvas.setLineWidth(wide)
        canvas.circle(x, y, POINT, stroke=1, fill=0)
    canvas.setFillColor(theme.INK)
    canvas.circle(x, y, 0.9, stroke=0, fill=1)


def _leader(canvas: Any, line: Line) -> None:
    """Dashed, so that nobody takes it for a line that was found."""
    for (colour, wide), dash in zip(OUTLINE, ((), (1.2, 1.4)), strict=True):
        canvas.setStrokeColor(colour)
        canvas.setLineWidth(wide * 0.8)
        canvas.setDash(*([list(dash)] if dash else []))
        canvas.line(*line)
    canvas.setDash()


def _number(canvas: Any, number: str, place: Box) -> None:
    left, bottom, right, top = place
    canvas.setFillColor(theme.WHITE)
    canvas.setStrokeColor(theme.INK)
    canvas.setLineWidth(theme.THIN)
    canvas.roundRect(left, bottom, right - left, top - bottom, 1.5, stroke=1, fill=1)
    canvas.setFillColor(theme.INK)
    canvas.setFont(fonts.SANS_BOLD, NUMBER_SIZE)
    canvas.drawCentredString((left + right) / 2, bottom + 2.4, number)
