"""The same layout as a drawing for paper; lines differ by dash and hatch, so black and white suffices."""

from dataclasses import dataclass
from typing import Any

from reportlab.graphics.shapes import Circle, Drawing, PolyLine, String

from records.pdf import fonts, glyphs, theme
from records.pdf.charts.layout import WIDTH, lay_out
from records.pdf.charts.model import Chart
from records.pdf.charts.shapes import TEXT_SIZE, Dot, Line, Role, Text, TextRole


@dataclass(frozen=True)
class _Look:
    width: float
    colour: Any = theme.INK
    dash: tuple[float, ...] | None = None


_LOOKS: dict[Role, _Look] = {
    "frame": _Look(0.8),
    "grid": _Look(0.25, theme.FAINT),
    "tick": _Look(0.8),
    "measured": _Look(1.5),
    "calculated": _Look(1.5, theme.COPPER, (6, 3)),
    "hatch": _Look(0.35, theme.COPPER),
    "target": _Look(0.9, theme.INK, (9, 2.5, 1.5, 2.5)),
    "event": _Look(0.6, theme.LIGHTER, (1, 2)),
    "gap": _Look(0.8),
}
_FACES: dict[TextRole, str] = {"axis-title": fonts.SANS_BOLD, "series-label": fonts.SANS_BOLD}


def _line(mark: Line, scale: float, height: float) -> Any:
    look = _LOOKS[mark.role]
    points = [part for x, y in mark.places for part in (x * scale, height - y * scale)]
    return PolyLine(points, strokeColor=look.colour, strokeWidth=look.width, strokeDashArray=look.dash)


def _strings(mark: Text, scale: float, height: float) -> list[Any]:
    size = TEXT_SIZE[mark.role] * scale
    parts = glyphs.runs(mark.text, _FACES.get(mark.role, fonts.SANS))
    whole = glyphs.runs_width(parts, size)
    x = mark.x * scale - {"start": 0.0, "middle": whole / 2, "end": whole}[mark.anchor]
    colour = theme.LIGHTER if mark.role in ("tick-label", "note") else theme.INK
    strings = []
    for run in parts:
        own = size * run.scale
        y = height - mark.y * scale + size * run.rise
        strings.append(String(x, y, run.text, fontName=run.face, fontSize=own, fillColor=colour))
        x += fonts.width(run.text, run.face, own)
    return strings


def drawing(chart: Chart, width: float) -> Any:
    """A Drawing of the given width in points, as high as the chart needs."""
    layout = lay_out(chart, WIDTH)
    scale = width / layout.width
    height = layout.height * scale
    answer = Drawing(width, height)
    for mark in layout.marks:
        if isinstance(mark, Text):
            for string in _strings(mark, scale, height):
                answer.add(string)
        elif isinstance(mark, Dot):
            answer.add(Circle(mark.x * scale, height - mark.y * scale, 2.0, fillColor=theme.INK, strokeColor=None))
        else:
            answer.add(_line(mark, scale, height))
    return answer
