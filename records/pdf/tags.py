"""Tags that hang on a thing: number in clear beside its code, kind of copy, and the word COPY."""

from dataclasses import dataclass
from typing import Any

from reportlab.lib.units import mm

from records.pdf import fonts, label_text, theme
from records.pdf.codes import LEAST_MM, draw_qr
from records.pdf.label_text import Words

MARGIN = 2.5 * mm
UNMARKED = "UNMARKED COPY, not to leave the workshop"


@dataclass(frozen=True)
class ObjectTag:
    """A thing's tag; `kind` is the kind of copy and its date, `word` stays empty for an original."""

    number: str
    kind: str
    title: str
    code: str
    word: str = "COPY"

    def draw(self, canvas: Any, x: float, y: float, width: float, height: float) -> None:
        side = max(LEAST_MM * mm, min(height - 2 * MARGIN, width * 0.36))
        draw_qr(canvas, self.code, x + width - MARGIN - side, y + (height - side) / 2, side)
        room = width - side - 3 * MARGIN
        band = 15.0 if self.word else 0.0
        words = [
            Words(self.kind, 9.5, fonts.SANS_BOLD),
            Words(self.number, 15, fonts.SANS_BOLD, after=2),
            Words(self.title, 8.5),
        ]
        parts = label_text.fit(words, room, height - 2 * MARGIN - band)
        label_text.draw(canvas, parts, x + MARGIN, y + height - MARGIN, room)
        if self.word:
            _framed_word(canvas, self.word, x + MARGIN, y + MARGIN, room)


@dataclass(frozen=True)
class UnmarkedTag:
    """The only tag that a copy without a permanent mark may carry."""

    number: str
    title: str = ""

    def draw(self, canvas: Any, x: float, y: float, width: float, height: float) -> None:
        inset = 1.2 * mm
        canvas.setStrokeColor(theme.INK)
        canvas.setLineWidth(2.4)
        canvas.rect(x + inset, y + inset, width - 2 * inset, height - 2 * inset)
        edge = inset + MARGIN
        words = [
            Words(UNMARKED, 14, fonts.SANS_BOLD, after=4),
            Words(self.number, 12, fonts.SANS_BOLD, after=2),
            Words(self.title, 8.5),
        ]
        parts = label_text.fit(words, width - 2 * edge, height - 2 * edge)
        label_text.draw(canvas, parts, x + edge, y + height - edge, width - 2 * edge)


Tag = ObjectTag | UnmarkedTag


def _framed_word(canvas: Any, word: str, x: float, y: float, room: float) -> None:
    (paragraph, _), *_ = label_text.fit([Words(word, 9, fonts.SANS_BOLD)], room - 8, 14)
    wide = fonts.width(word, fonts.SANS_BOLD, paragraph.style.fontSize) + 8
    canvas.setStrokeColor(theme.INK)
    canvas.setLineWidth(0.9)
    canvas.rect(x, y, wide, 12.5)
    label_text.draw(canvas, [(paragraph, 0)], x + 4, y + 12.2, room)
