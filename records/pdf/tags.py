"""Tags that hang on a thing: number in clear beside its code, kind of copy, and the word COPY."""

from dataclasses import dataclass
from typing import Any

from reportlab.lib.units import mm

from records.pdf import fonts, label_text, theme
from records.pdf.codes import LEAST_MM, draw_qr
from records.pdf.label_text import Words

MARGIN = 2.5 * mm
INSET = 1.2 * mm  # of the frame of an unmarked copy's tag
LARGEST = 35 * mm  # a code need not grow with its tag
UNMARKED = "UNMARKED COPY, not to leave the workshop"


@dataclass(frozen=True)
class ObjectTag:
    """A thing's tag; `kind` is the kind of copy and its date, `word` stays empty for an original."""

    number: str
    kind: str
    title: str
    code: str
    word: str = "COPY"

    @property
    def words(self) -> list[Words]:
        return [
            Words(self.kind, 9.5, fonts.SANS_BOLD),
            Words(self.number, 15, fonts.SANS_BOLD, after=2),
            Words(self.title, 8.5),
        ]

    def _side(self, width: float, height: float) -> float:
        return min(max(LEAST_MM * mm, min(height - 2 * MARGIN, width * 0.36)), LARGEST)

    def room(self, width: float, height: float) -> tuple[float, float]:
        """What the words may fill beside the code and above the framed word."""
        return width - self._side(width, height) - 3 * MARGIN, height - 2 * MARGIN - (15.0 if self.word else 0.0)

    def draw(self, canvas: Any, x: float, y: float, width: float, height: float) -> None:
        side, room = self._side(width, height), self.room(width, height)
        draw_qr(canvas, self.code, x + width - MARGIN - side, y + (height - side) / 2, side)
        label_text.draw(canvas, label_text.fit(self.words, *room), x + MARGIN, y + height - MARGIN, room[0])
        if self.word:
            _framed_word(canvas, self.word, x + MARGIN, y + MARGIN, room[0])


@dataclass(frozen=True)
class UnmarkedTag:
    """The only tag that a copy without a permanent mark may carry."""

    number: str
    title: str = ""

    @property
    def words(self) -> list[Words]:
        return [
            Words(UNMARKED, 14, fonts.SANS_BOLD, after=4),
            Words(self.number, 12, fonts.SANS_BOLD, after=2),
            Words(self.title, 8.5),
        ]

    def room(self, width: float, height: float) -> tuple[float, float]:
        return width - 2 * (INSET + MARGIN), height - 2 * (INSET + MARGIN)

    def draw(self, canvas: Any, x: float, y: float, width: float, height: float) -> None:
        canvas.setStrokeColor(theme.INK)
        canvas.setLineWidth(2.4)
        canvas.rect(x + INSET, y + INSET, width - 2 * INSET, height - 2 * INSET)
        edge, room = INSET + MARGIN, self.room(width, height)
        label_text.draw(canvas, label_text.fit(self.words, *room), x + edge, y + height - edge, room[0])


Tag = ObjectTag | UnmarkedTag


def fits(tag: Tag, size: tuple[float, float], least_pct: int) -> bool:
    """Whether all of it stands on a tag of this size, no smaller than a part of the sizes it is meant to have."""
    try:
        label_text.fit(tag.words, *tag.room(*size), least_pct)
    except label_text.LabelTooFull:
        return False
    return True


def _framed_word(canvas: Any, word: str, x: float, y: float, room: float) -> None:
    (paragraph, _), *_ = label_text.fit([Words(word, 9, fonts.SANS_BOLD)], room - 8, 14)
    wide = fonts.width(word, fonts.SANS_BOLD, paragraph.style.fontSize) + 8
    canvas.setStrokeColor(theme.INK)
    canvas.setLineWidth(0.9)
    canvas.rect(x, y, wide, 12.5)
    label_text.draw(canvas, [(paragraph, 0)], x + 4, y + 12.2, room)
