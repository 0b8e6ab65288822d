"""A chart laid out: panels under each other on one time axis, every label in its place."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from records.pdf.charts.curves import gaps, hatch, pieces
from records.pdf.charts.lettering import ROW, Names, place_events, text_width
from records.pdf.charts.model import Chart, Panel, Series
from records.pdf.charts.scales import ValueScale, clock_name, time_ticks, value_scale
from records.pdf.charts.shapes import Dot, Layout, Line, Place, Text

WIDTH, PANEL_HEIGHT = 720.0, 165.0
RIGHT, TITLE, BETWEEN, FOOT = 12.0, 22.0, 18.0, 50.0
TICK_ROOM = 82.0  # width that a clock label needs to stand clear
Marks = list[Line | Dot | Text]


@dataclass(frozen=True)
class Plot:
    """The rectangle of one panel and its two scales."""

    left: float
    right: float
    top: float
    bottom: float
    scale: ValueScale
    x_at: Callable[[datetime], float]

    def y_at(self, value: float) -> float:
        share = (value - self.scale.low) / (self.scale.high - self.scale.low)
        return self.bottom - min(max(share, 0.0), 1.0) * (self.bottom - self.top)

    def place(self, at: datetime, value: float) -> Place:
        return self.x_at(at), self.y_at(value)


def lay_out(chart: Chart, width: float = WIDTH) -> Layout:
    """The whole chart in layout units; a chart without a span of time says so."""
    span = chart.span()
    if span is None:
        return Layout(width, 60, (Text(0, 34, "No readings yet.", "note"),))
    scales = [value_scale(panel) for panel in chart.panels]
    left = max(text_width(s.label(t), "tick-label") for s in scales for t in s.ticks) + 12
    x_at = _time_scale(span, left, width - RIGHT)
    events = place_events(chart.events, x_at, width)
    first_top = max((e.row + 1 for e in events), default=0) * ROW + TITLE + 4
    plots = []
    for index, scale in enumerate(scales):
        top = first_top + index * (PANEL_HEIGHT + TITLE + BETWEEN)
        plots.append(Plot(left, width - RIGHT, top, top + PANEL_HEIGHT, scale, x_at))
    marks = _time_axis(chart, span, plots)
    for panel, plot in zip(chart.panels, plots, strict=True):
        marks += _panel(panel, plot)
    for event in events:
        base = first_top - TITLE - 2 - event.row * ROW
        marks.append(Line(((event.x, base + 3), (event.x, plots[-1].bottom)), "event"))
        marks.append(Text(event.label_x, base, event.label, "event-label"))
    return Layout(width, plots[-1].bottom + FOOT, tuple(marks))


def _time_scale(span: tuple[datetime, datetime], left: float, right: float) -> Callable[[datetime], float]:
    start, seconds = span[0], (span[1] - span[0]).total_seconds()

    def x_at(at: datetime) -> float:
        share = (at - start).total_seconds() / seconds
        return left + min(max(share, 0.0), 1.0) * (right - left)

    return x_at


def _time_axis(chart: Chart, span: tuple[datetime, datetime], plots: list[Plot]) -> Marks:
    foot, marks = plots[-1], Marks()
    for tick in time_ticks(*span, chart.tz, most=max(2, int((foot.right - foot.left) / TICK_ROOM))):
        x = foot.x_at(tick.at)
        marks += [Line(((x, plot.top), (x, plot.bottom)), "grid") for plot in plots]
        marks.append(Line(((x, foot.bottom), (x, foot.bottom + 4)), "tick"))
        marks.append(Text(x, foot.bottom + 17, tick.clock, "tick-label", "middle"))
        if tick.day:
            marks.append(Text(x, foot.bottom + 31, tick.day, "tick-label", "middle"))
    marks.append(Text(foot.right, foot.bottom + 45, clock_name(*span, chart.tz), "note", "end"))
    return marks


def _panel(panel: Panel, plot: Plot) -> Marks:
    marks: Marks = [Text(0, plot.top - 9, panel.axis.title, "axis-title")]
    for value in plot.scale.ticks:
        y = plot.y_at(value)
        marks.append(Line(((plot.left, y), (plot.right, y)), "frame" if value == plot.scale.low else "grid"))
        marks.append(Text(plot.left - 6, y + 4, plot.scale.label(value), "tick-label", "end"))
    names, words = Names(), Marks()
    for target in panel.targets:
        y = plot.y_at(target.value)
        marks.append(Line(((plot.left, y), (plot.right, y)), "target"))
        names.occupy([(plot.left + step, y) for step in range(0, int(plot.right - plot.left), 12)])
        words.append(
            names.put(
                target.label,
                "target-label",
                [(plot.left + 6, y - 5, "start"), (plot.left + 6, y + 14, "start")],
            )
        )
    for series in panel.series:
        marks += _curve(series, plot, names)
    words += [_name(series, plot, names) for series in panel.series if pieces(series)]
    return marks + words


def _curve(series: Series, plot: Plot, names: Names) -> Marks:
    marks = Marks()
    role = "calculated" if series.calculated else "measured"
    for piece in pieces(series):
        places = [plot.place(at, value) for at, value in piece]
        names.occupy(places)
        if series.calculated:
            marks += [Line(stroke, "hatch") for stroke in hatch(places, plot.bottom)]
        marks.append(Line(tuple(places), "calculated" if role == "calculated" else "measured"))
    if not series.calculated:
        marks += [Dot(*plot.place(at, value)) for at, value in series.points if value is not None]
    for start, end in gaps(series):
        left, right = plot.x_at(start), plot.x_at(end)
        marks += [Line(((x, plot.bottom), (x, plot.bottom - 12)), "gap") for x in (left, right)]
        if right - left > text_width("no reading", "note"):
            marks.append(Text((left + right) / 2, plot.bottom - 5, "no reading", "note", "middle"))
    return marks


def _name(series: Series, plot: Plot, names: Names) -> Text:
    """The name stands at the last of the highest places of its line."""
    drawn = [point for piece in pieces(series) for point in piece]
    highest = max(value for _, value in drawn)
    x, y = plot.place(*next(point for point in reversed(drawn) if point[1] == highest))
    text = f"{series.label}, calculated" if series.calculated else series.label
    wide = text_width(text, "series-label")
    x = max(x, plot.left + wide + 6)
    return names.put(
        text,
        "series-label",
        [
            (x - 4, y - 8, "end"),
            (x - 30, y + 18, "end"),
            (x - 70, y - 8, "end"),
            (x - 4, y - 22, "end"),
            (x - 4, y + 18, "end"),
        ],
    )
