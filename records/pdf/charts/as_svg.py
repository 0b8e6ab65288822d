"""The chart as SVG for a page: titled, described, without fixed size or inline style."""

from xml.sax.saxutils import escape, quoteattr

from records.pdf.charts.layout import WIDTH, lay_out
from records.pdf.charts.model import Chart
from records.pdf.charts.shapes import TEXT_SIZE, Dot, Layout, Line, Role, Text
from records.pdf.charts.steps import StepChart, lay_out_steps

# Presentation attributes: they hold without a stylesheet, and any rule for the class overrides them.
_LINES: dict[Role, str] = {
    "frame": 'stroke-width="1"',
    "grid": 'stroke-width="0.5" stroke-opacity="0.25"',
    "tick": 'stroke-width="1"',
    "measured": 'stroke-width="2" stroke-linejoin="round"',
    "calculated": 'stroke-width="2" stroke-dasharray="7 4"',
    "hatch": 'stroke-width="0.6" stroke-opacity="0.6"',
    "target": 'stroke-width="1.2" stroke-dasharray="12 3 2 3"',
    "event": 'stroke-width="1" stroke-dasharray="1 3"',
    "gap": 'stroke-width="1"',
}


def _number(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")


def _mark(mark: Line | Dot | Text) -> str:
    if isinstance(mark, Dot):
        place = f'cx="{_number(mark.x)}" cy="{_number(mark.y)}"'
        return f'<circle class="chart-dot" {place} r="2.6" fill="currentColor"/>'
    if isinstance(mark, Text):
        place = f'x="{_number(mark.x)}" y="{_number(mark.y)}" text-anchor="{mark.anchor}"'
        look = f'font-size="{TEXT_SIZE[mark.role]}" fill="currentColor"'
        return f'<text class="chart-{mark.role}" {place} {look}>{escape(mark.text)}</text>'
    points = " ".join(f"{_number(x)},{_number(y)}" for x, y in mark.places)
    look = _LINES[mark.role]
    return f'<polyline class="chart-{mark.role}" points="{points}" fill="none" stroke="currentColor" {look}/>'


def svg(chart: Chart, id_prefix: str, width: float = WIDTH) -> str:
    """An <svg> element for a page; `id_prefix` keeps the ids of several charts apart."""
    return drawn(lay_out(chart, width), chart.title, chart.description, id_prefix)


def step_svg(chart: StepChart, id_prefix: str, width: float = WIDTH) -> str:
    """The same for a chart over steps."""
    return drawn(lay_out_steps(chart, width), chart.title, chart.description, id_prefix)


def drawn(layout: Layout, name: str, words: str, id_prefix: str) -> str:
    """A layout as an <svg> element with its title and description."""
    title, described = f"{id_prefix}-title", f"{id_prefix}-desc"
    box = f"0 0 {_number(layout.width)} {_number(layout.height)}"
    return "\n".join(
        [
            f'<svg xmlns="http://www.w3.org/2000/svg" class="chart" role="img" viewBox="{box}"'
            f" aria-labelledby={quoteattr(f'{title} {described}')}>",
            f"<title id={quoteattr(title)}>{escape(name)}</title>",
            f"<desc id={quoteattr(described)}>{escape(words)}</desc>",
            *(_mark(mark) for mark in layout.marks),
            "</svg>",
        ]
    )
