"""Charts: one pure description, laid out once, drawn twice: SVG for pages, a Drawing for paper."""

from records.pdf.charts.as_drawing import drawing
from records.pdf.charts.as_svg import svg
from records.pdf.charts.model import Axis, Chart, Event, Panel, Series, Target

__all__ = ["Axis", "Chart", "Event", "Panel", "Series", "Target", "drawing", "svg"]
