"""What every block can count on: the room it prints in, and escaped text in a named style."""

from dataclasses import dataclass
from typing import Any, Protocol

from reportlab.platypus import Flowable, Paragraph

from records.pdf import glyphs, theme
from records.wording.binding import bound


@dataclass(frozen=True)
class Room:
    """Width and height of the text area in points."""

    width: float
    height: float


class Block(Protocol):
    """A part of a paper: a frozen record that knows how to be set."""

    def flow(self, room: Room) -> list[Flowable]: ...


def paragraph(text: str, style_name: str, lead: str = "") -> Any:
    """Text in a named style, every character escaped; `lead` is our own markup in front of it."""
    style = theme.style(style_name)
    return Paragraph(lead + glyphs.markup(bound(text), style.fontName, style.fontSize), style)


def kept(flowable: Any) -> Any:
    """Mark a flowable so that it never stands alone at the foot of a page."""
    flowable.keepWithNext = 1
    return flowable
