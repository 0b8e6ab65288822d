"""What is drawn in one panel: its value axis, targets, curves with their gaps, and the names beside them."""

from collections.abc import Sequence

from records.pdf.charts.curves import gaps, hatch, pieces
from records.pdf.charts.lettering import Names, text_width
from records.pdf.charts.model import Panel, Series, Target
from records.pdf.charts.plot import Marks, Plot
from records.pdf.charts.shapes import Anchor, Dot, Line, Text

GAP_WORDS = "no reading"
OVERHANG = 4.0  # how far a name may stand out over the right edge of the plot: beyond lies the page's side
UNDER = 10.0  # below the plot lies the axis of time
MOST_DOTS = 80  # more entries than this are a trace, not a sheet


def draw_panel(panel: Panel, plot: Plot, event_places: Sequence[float]) -> Marks:
    marks = _value_axis(panel, plot)
    names, words = Names(), Marks()
    names.occupy([(plot.left, plot.bottom + UNDER), (plot.right, plot.bottom + UNDER)])  # where the hours stand
    for x in event_places:
        names.occupy([(x, plot.top), (x, plot.bottom)])
    for target in panel.targets:
        y = plot.y_at(target.value)
        marks.append(Line(((plot.left, y), (plot.right, y)), "target"))
        names.occupy([(plot.left, y), (plot.right, y)])
    for series in panel.series:
        marks += _curve(series, plot, names)
    words += [_series_name(series, plot, names) for series in panel.series if pieces(series)]
    words += [_target_name(target, plot, names) for target in panel.targets]
    return marks + words


def _value_axis(panel: Panel, plot: Plot) -> Marks:
    marks: Marks = [Text(0, plot.top - 12, panel.axis.title, "axis-title")]
    for value in plot.scale.ticks:
        y = plot.y_at(value)
        marks.append(Line(((plot.left, y), (plot.right, y)), "frame" if value == plot.scale.low else "grid"))
        marks.append(Text(plot.left - 6, y + 4, plot.scale.label(value), "tick-label", "end"))
    return marks


def _curve(series: Series, plot: Plot, names: Names) -> Marks:
    marks = Marks()
    for piece in pieces(series):
        places = [plot.place(at, value) for at, value in piece]
        names.occupy(places)
        if series.calculated:
            marks += [Line(stroke, "hatch") for stroke in hatch(places, plot.bottom)]
        marks.append(Line(tuple(places), "calculated" if series.calculated else "measured"))
    if not series.calculated and len(series.points) <= MOST_DOTS:
        marks += [Dot(*plot.place(at, value)) for at, value in series.points if value is not None]
    return marks + _gaps(series, plot)


def _gaps(series: Series, plot: Plot) -> Marks:
    marks = Marks()
    for start, end in gaps(series):
        left, right = plot.x_at(start), plot.x_at(end)
        marks += [Line(((x, plot.bottom), (x, plot.bottom - 12)), "gap") for x in (left, right)]
        if right - left > text_width(GAP_WORDS, "note") + 6:
            marks.append(Text((left + right) / 2, plot.bottom - 5, GAP_WORDS, "note", "middle"))
    return marks


def _series_name(series: Series, plot: Plot, names: Names) -> Text:
    """The name stands at the last of the highest places of its line, or near it."""
    drawn = [point for piece in pieces(series) for point in piece]
    highest = max(value for _, value in drawn)
    x, y = plot.place(*next(point for point in reversed(drawn) if point[1] == highest))
    text = f"{series.label}, calculated" if series.calculated else series.label
    least = plot.left + text_width(text, "series-label") + 6
    x = max(x, least)
    shifts = (
        (-4, -7),
        (-24, 16),
        (60, 16),
        (120, 16),
        (-70, -7),
        (-140, -7),
        (-4, -22),
        (-24, -22),
        (-70, -22),
        (-140, 16),
        (-4, -37),
        (-70, -37),
    )
    most = plot.right + OVERHANG
    ends = [(min(max(x + right, least), most), y + down) for right, down in shifts]
    offers: list[tuple[float, float, Anchor]] = [(end, baseline, "end") for end, baseline in ends]
    return names.put(text, "series-label", offers)


def _target_name(target: Target, plot: Plot, names: Names) -> Text:
    y, span = plot.y_at(target.value), plot.right - plot.left
    shares = (0.01, 0.1, 0.2, 0.3, 0.4, 0.5)
    offers: list[tuple[float, float, Anchor]] = [(plot.left + share * span, y - 5, "start") for share in shares]
    return names.put(target.label, "target-label", offers)
