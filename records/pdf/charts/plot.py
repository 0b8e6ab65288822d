"""The rectangle of one panel with its two scales."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from records.pdf.charts.scales import ValueScale
from records.pdf.charts.shapes import Dot, Line, Place, Text

Marks = list[Line | Dot | Text]


@dataclass(frozen=True)
class Plot:
    """Edges in layout units; values outside the scale stop at the edge."""

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


def time_scale(span: tuple[datetime, datetime], left: float, right: float) -> Callable[[datetime], float]:
    """Instants to places: the difference of instants counts, whatever the clocks did."""
    start, seconds = span[0], (span[1] - span[0]).total_seconds()

    def x_at(at: datetime) -> float:
        share = (at - start).total_seconds() / seconds
        return left + min(max(share, 0.0), 1.0) * (right - left)

    return x_at
