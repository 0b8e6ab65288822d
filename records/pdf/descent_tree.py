"""The tree of descent on paper, as lines and letters: it runs on over as many pages as it needs."""

from dataclasses import dataclass
from typing import Any

from reportlab.platypus import Flowable, Spacer

from records.descent.bands import Band, band_from
from records.descent.drawing import ROW, TOP, Drawing, Elbow, Node
from records.pdf import fonts, theme
from records.pdf.flow import Room, kept, paragraph
from records.pdf.lettering import draw_text

SCALE = 0.58  # points for a unit of the drawing
NUMBER, WORDS, QUESTION = 8.6, 7.6, 11.5
HALF = 3.4
LEAST_ROWS = 3  # fewer are not begun at the foot of a page
KEY = (
    "Filled round: positive. Open square: negative. ?: not known. A dashed line is a step that nobody recorded; "
    "a dashed sign stands for a piece that is lost or destroyed. The piece asked about is framed."
)


@dataclass(frozen=True)
class DescentTree:
    """Each piece beneath what it was made from; its key stands above, so that it is read first."""

    drawing: Drawing

    def flow(self, room: Room) -> list[Flowable]:
        return [kept(paragraph(KEY, "caption")), Spacer(0, 4), _Tree(self.drawing), Spacer(0, 6)]


class _Tree(Flowable):
    """What is left of the tree from one row on; splits itself into bands."""

    breaks_after = (TOP + LEAST_ROWS * ROW) * SCALE

    def __init__(self, drawing: Drawing, first: int = 0) -> None:
        super().__init__()
        self.drawing, self.first = drawing, first

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        band, after = band_from(self.drawing, self.first, width / SCALE, float("inf"))
        whole = after >= len(self.drawing.nodes)
        self.band = band
        return width, band.height * SCALE if whole else max(height + 1, self.breaks_after)

    def split(self, width: float, height: float) -> list[Flowable]:
        if height < min(self.breaks_after, (TOP + ROW * (len(self.drawing.nodes) - self.first)) * SCALE):
            return []
        band, after = band_from(self.drawing, self.first, width / SCALE, height / SCALE)
        rest = [_Tree(self.drawing, after)] if after < len(self.drawing.nodes) else []
        return [_Band(band, width), *rest]

    def draw(self) -> None:
        _draw(self.canv, self.band)


class _Band(Flowable):
    def __init__(self, band: Band, width: float) -> None:
        super().__init__()
        self.band, self.width, self.height = band, width, band.height * SCALE

    def wrap(self, *_available: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        _draw(self.canv, self.band)


def _draw(canvas: Any, band: Band) -> None:
    canvas.saveState()
    canvas.translate(0, band.height * SCALE)  # reportlab counts upwards, the layout down from the top
    for elbow in band.elbows:
        _elbow(canvas, elbow)
    for node in band.nodes:
        _sign(canvas, node)
        _words(canvas, node, band.above.get(node, ""))
    canvas.restoreState()


def _elbow(canvas: Any, elbow: Elbow) -> None:
    canvas.setStrokeColor(theme.LIGHTER)
    canvas.setLineWidth(0.6)
    canvas.setDash(*([] if elbow.known else [2, 2]))
    x, top, bottom, end = (part * SCALE for part in (elbow.x, elbow.top, elbow.bottom, elbow.end))
    canvas.lines([(x, -top, x, -bottom), *([(x, -bottom, end, -bottom)] if end != x else [])])
    canvas.setDash()


def _sign(canvas: Any, node: Node) -> None:
    x, y = node.x * SCALE, -node.y * SCALE
    if node.kind == "unknown":
        canvas.setFillColor(theme.INK)
        draw_text(canvas, x, y - QUESTION * 0.33, "?", fonts.SANS_BOLD, QUESTION, "middle")
        return
    gone, filled = node.caption.gone, node.kind == "positive" and not node.caption.gone
    canvas.setLineWidth(0.9)
    canvas.setStrokeColor(theme.INK if node.kind == "negative" else theme.COPPER)
    canvas.setFillColor(theme.COPPER if filled else theme.WHITE)
    canvas.setDash(*([1.4, 1.4] if gone else []))
    if node.kind == "negative":
        canvas.rect(x - HALF, y - HALF, 2 * HALF, 2 * HALF, stroke=1, fill=1)
    else:
        canvas.circle(x, y, HALF, stroke=1, fill=1)
    canvas.setDash()


def _words(canvas: Any, node: Node, above: str) -> None:
    x, y = (node.x + 16) * SCALE, -node.y * SCALE
    if not node.known:
        canvas.setFillColor(theme.LIGHTER)
        draw_text(canvas, x, y - WORDS * 0.33, node.caption.words, fonts.SANS, WORDS)
        return
    canvas.setFillColor(theme.INK)
    wide = draw_text(canvas, x, y - 1, node.caption.number, fonts.SANS_BOLD, NUMBER)
    if node.caption.here:
        canvas.setStrokeColor(theme.INK)
        canvas.setLineWidth(theme.THIN)
        canvas.rect(x - 2, y - 3.2, wide + 4, NUMBER + 2.2, stroke=1, fill=0)
    canvas.setFillColor(theme.LIGHTER)
    said = [f"from {above}" if above else "", "drawn above" if node.repeated else ""]
    if beside := ", ".join(filter(None, said)):
        draw_text(canvas, x + wide + 6, y - 1, f"({beside})", fonts.SANS, WORDS)
    if not node.repeated:
        draw_text(canvas, x, y - 1 - NUMBER - 1.4, node.caption.words, fonts.SANS, WORDS)
