"""Where words go: events in rows above the panels, names beside their lines, nothing over anything."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from itertools import pairwise

from records.pdf import fonts, glyphs
from records.pdf.charts.model import Event
from records.pdf.charts.shapes import TEXT_SIZE, Anchor, Place, Text, TextRole

ROW = 15.0
GRAIN = 6.0  # how finely a line is watched for names that would lie across it
WIDER = 1.08  # a page's own face may run wider than the one measured here


def text_width(text: str, role: TextRole) -> float:
    return WIDER * glyphs.runs_width(glyphs.runs(text, fonts.SANS), TEXT_SIZE[role])


@dataclass(frozen=True)
class EventPlace:
    """An event's line, and its label a number of rows above the plot."""

    x: float
    label_x: float
    label_width: float
    row: int
    label: str

    def covers(self, left: float, right: float) -> bool:
        return self.label_x - 4 < right and left < max(self.label_x + self.label_width, self.x) + 8


def place_events(events: tuple[Event, ...], x_at: Callable[[datetime], float], width: float) -> list[EventPlace]:
    """From right to left, each as low as it can stand without lying over a label or a line."""
    placed: list[EventPlace] = []
    for event in sorted(events, key=lambda e: e.at, reverse=True):
        x, wide = x_at(event.at), text_width(event.label, "event-label")
        label_x = max(0.0, min(x + 4, width - wide))
        rows = [other.row for other in placed if other.covers(min(x, label_x), label_x + wide)]
        placed.append(EventPlace(x, label_x, wide, max(rows, default=-1) + 1, event.label))
    return placed


class Names:
    """Names of lines and targets, each put at the first free place of those offered."""

    def __init__(self) -> None:
        self.taken: list[tuple[float, float, float, float]] = []

    def occupy(self, places: list[Place]) -> None:
        """A line that no name should lie across."""
        for (x0, y0), (x1, y1) in pairwise(places):
            parts = max(1, round(max(abs(x1 - x0), abs(y1 - y0)) / GRAIN))
            spots = [(x0 + (x1 - x0) * i / parts, y0 + (y1 - y0) * i / parts) for i in range(parts + 1)]
            self.taken += [(x - 1, y - 1, x + 1, y + 1) for x, y in spots]

    def put(self, text: str, role: TextRole, offers: list[tuple[float, float, Anchor]]) -> Text:
        wide, high = text_width(text, role), TEXT_SIZE[role]
        best = min(offers, key=lambda offer: self._clashes(_box(offer, wide, high)))
        self.taken.append(_box(best, wide, high))
        return Text(best[0], best[1], text, role, best[2])

    def _clashes(self, box: tuple[float, float, float, float]) -> int:
        left, top, right, bottom = box
        return sum(1 for a, b, c, d in self.taken if a < right and left < c and b < bottom and top < d)


def _box(offer: tuple[float, float, Anchor], wide: float, high: float) -> tuple[float, float, float, float]:
    x, baseline, anchor = offer
    left = x - {"start": 0.0, "middle": wide / 2, "end": wide}[anchor]
    return left, baseline - high * 0.8, left + wide, baseline + high * 0.25
