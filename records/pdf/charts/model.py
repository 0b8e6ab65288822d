"""What a chart shows, without a word on how: panels that share one time axis, events, targets."""

from dataclasses import dataclass
from datetime import datetime, tzinfo

Point = tuple[datetime, float | None]


@dataclass(frozen=True)
class Axis:
    """Label and unit of a value axis; without limits they follow from the values and the targets."""

    label: str
    unit: str
    low: float | None = None
    high: float | None = None

    @property
    def title(self) -> str:
        return f"{self.label}, {self.unit}" if self.unit else self.label


@dataclass(frozen=True)
class Series:
    """Instants with values; None begins a gap. A step holds its value until the next entry.

    Measured is a solid line with a dot at each entry; calculated is dashed with a hatched area.
    """

    label: str
    points: tuple[Point, ...]
    step: bool = False
    calculated: bool = False


@dataclass(frozen=True)
class Target:
    """A value to reach, drawn across the panel."""

    label: str
    value: float


@dataclass(frozen=True)
class Event:
    """Something that happened at an instant, marked through all panels."""

    at: datetime
    label: str


@dataclass(frozen=True)
class Panel:
    """One value axis with what is drawn against it."""

    axis: Axis
    series: tuple[Series, ...] = ()
    targets: tuple[Target, ...] = ()


@dataclass(frozen=True)
class Chart:
    """Aware instants throughout; `tz` is the clock that the axis shows."""

    title: str
    description: str
    panels: tuple[Panel, ...]
    tz: tzinfo
    events: tuple[Event, ...] = ()
    start: datetime | None = None
    end: datetime | None = None

    def span(self) -> tuple[datetime, datetime] | None:
        """First and last instant shown; None when there is nothing to show."""
        instants = [at for panel in self.panels for series in panel.series for at, _ in series.points]
        instants += [event.at for event in self.events]
        first, last = self.start or min(instants, default=None), self.end or max(instants, default=None)
        return (first, last) if first and last and first < last else None
