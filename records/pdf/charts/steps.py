"""A chart over steps instead of time: one place for each piece of a line of descent."""

from dataclasses import dataclass
from datetime import UTC, datetime

from records.pdf.charts.lettering import text_width
from records.pdf.charts.model import Axis, Panel, Series
from records.pdf.charts.scales import value_scale
from records.pdf.charts.shapes import Dot, Layout, Line, Role, Text

TOP, HEIGHT, FOOT, RIGHT = 25.0, 120.0, 34.0, 40.0
_NO_TIME = datetime(2000, 1, 1, tzinfo=UTC)


@dataclass(frozen=True)
class StepChart:
    """Values at each named step; None where nothing is known. Measured is solid with dots, calculated dashed."""

    title: str
    description: str
    axis: Axis
    steps: tuple[str, ...]
    measured: tuple[float | None, ...]
    calculated: tuple[float | None, ...] = ()


def lay_out_steps(chart: StepChart, width: float) -> Layout:
    points = tuple((_NO_TIME, value) for value in (*chart.measured, *chart.calculated))
    scale = value_scale(Panel(chart.axis, (Series("", points),)), 4)
    left = max(text_width(scale.label(tick), "tick-label") for tick in scale.ticks) + 30
    bottom, room = TOP + HEIGHT, width - RIGHT - left

    def y_at(value: float) -> float:
        return bottom - (value - scale.low) / (scale.high - scale.low) * HEIGHT

    def x_at(step: int) -> float:
        return left + room * (step / (len(chart.steps) - 1) if len(chart.steps) > 1 else 0.5)

    marks: list[Line | Dot | Text] = [Text(0, TOP - 12, chart.axis.title, "axis-title")]
    for tick in scale.ticks:
        marks.append(Line(((left, y_at(tick)), (width - RIGHT, y_at(tick))), "grid"))
        marks.append(Text(left - 6, y_at(tick) + 4, scale.label(tick), "tick-label", "end"))
    drawn: tuple[tuple[tuple[float | None, ...], Role], ...] = (
        (chart.calculated, "calculated"),
        (chart.measured, "measured"),
    )
    for values, role in drawn:
        places = tuple((x_at(step), y_at(value)) for step, value in enumerate(values) if value is not None)
        if len(places) > 1:
            marks.append(Line(places, role))
        marks += [Dot(*place) for place in places if role == "measured"]
    marks += [Text(x_at(step), bottom + 20, name, "tick-label", "middle") for step, name in enumerate(chart.steps)]
    return Layout(width, bottom + FOOT, tuple(marks))
