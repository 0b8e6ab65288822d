"""A chart laid out: panels under each other on one time axis, events through all of them."""

from datetime import datetime

from records.pdf.charts.lettering import ROW, EventPlace, place_events, text_width
from records.pdf.charts.model import Chart, Panel
from records.pdf.charts.panels import draw_panel
from records.pdf.charts.plot import Marks, Plot, time_scale
from records.pdf.charts.scales import clock_name, time_ticks, value_scale
from records.pdf.charts.shapes import Layout, Line, Text

WIDTH, PANEL_HEIGHT = 720.0, 140.0
RIGHT, TITLE, BETWEEN, FOOT = 22.0, 25.0, 14.0, 50.0
TICK_ROOM = 76.0  # width that a clock label needs to stand clear


def lay_out(chart: Chart, width: float = WIDTH) -> Layout:
    """The whole chart in layout units; a chart without a span of time says so."""
    span = chart.span()
    if span is None:
        return Layout(width, 60, (Text(0, 34, "No readings yet.", "note"),))
    scales = [value_scale(panel) for panel in chart.panels]
    left = max(text_width(s.label(t), "tick-label") for s in scales for t in s.ticks) + 12
    x_at = time_scale(span, left, width - RIGHT)
    events = place_events(chart.events, x_at, width)
    first = max((e.row + 1 for e in events), default=0) * ROW + TITLE + 4
    tops = [first + index * (PANEL_HEIGHT + TITLE + BETWEEN) for index in range(len(scales))]
    plots = [
        Plot(left, width - RIGHT, top, top + PANEL_HEIGHT, scale, x_at) for top, scale in zip(tops, scales, strict=True)
    ]
    marks = _time_axis(chart, span, plots)
    for panel, plot in zip(chart.panels, plots, strict=True):
        marks += draw_panel(panel, plot, [event.x for event in events])
    for event in events:
        marks += _event(event, chart.panels, plots)
    return Layout(width, plots[-1].bottom + FOOT, tuple(marks))


def _time_axis(chart: Chart, span: tuple[datetime, datetime], plots: list[Plot]) -> Marks:
    foot, marks = plots[-1], Marks()
    for tick in time_ticks(*span, chart.tz, most=max(2, int((foot.right - foot.left) / TICK_ROOM))):
        x = foot.x_at(tick.at)
        marks += [Line(((x, plot.top), (x, plot.bottom)), "grid") for plot in plots]
        marks.append(Line(((x, foot.bottom), (x, foot.bottom + 4)), "tick"))
        marks.append(Text(x, foot.bottom + 17, tick.clock, "tick-label", "middle"))
        if tick.day:
            marks.append(Text(x, foot.bottom + 31, tick.day, "tick-label", "middle"))
    marks.append(Text(foot.right, foot.bottom + 46, clock_name(*span, chart.tz), "note", "end"))
    return marks


def _event(event: EventPlace, panels: tuple[Panel, ...], plots: list[Plot]) -> Marks:
    """Label and line; the line leaves out the titles of the panels."""
    base = plots[0].top - TITLE - 2 - event.row * ROW
    marks: Marks = [Text(event.label_x, base, event.label, "event-label")]
    above = base + 3
    for panel, plot in zip(panels, plots, strict=True):
        if event.x < text_width(panel.axis.title, "axis-title") + 4:
            marks.append(Line(((event.x, above), (event.x, plot.top - TITLE + 2)), "event"))
            above = plot.top
        marks.append(Line(((event.x, above), (event.x, plot.bottom)), "event"))
        above = plot.bottom
    return marks
