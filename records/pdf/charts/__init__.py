"""Charts: one pure description, laid out once, drawn twice: SVG for pages, for paper a Drawing (`as_drawing`)."""

from records.pdf.charts.as_svg import svg
from records.pdf.charts.model import Axis, Chart, Event, Panel, Series, Target

__all__ = ["Axis", "Chart", "Event", "Panel", "Series", "Target", "svg"]
