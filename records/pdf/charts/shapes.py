"""What a laid-out chart consists of. Units of the layout, y grows downwards; the role decides the look."""

from dataclasses import dataclass
from typing import Literal

Role = Literal["frame", "grid", "tick", "measured", "calculated", "hatch", "target", "event", "gap"]
TextRole = Literal["tick-label", "axis-title", "series-label", "target-label", "event-label", "note"]
Anchor = Literal["start", "middle", "end"]
Place = tuple[float, float]

TEXT_SIZE: dict[TextRole, float] = {
    "tick-label": 12, "axis-title": 12, "series-label": 12, "target-label": 12,
    "event-label": 11.5, "note": 11.5,
}  # fmt: skip


@dataclass(frozen=True)
class Line:
    """An open line through places."""

    places: tuple[Place, ...]
    role: Role


@dataclass(frozen=True)
class Dot:
    """A single measured entry."""

    x: float
    y: float


@dataclass(frozen=True)
class Text:
    """A line of text on its baseline."""

    x: float
    y: float
    text: str
    role: TextRole
    anchor: Anchor = "start"


@dataclass(frozen=True)
class Layout:
    """Everything to draw, in drawing order."""

    width: float
    height: float
    marks: tuple[Line | Dot | Text, ...]
