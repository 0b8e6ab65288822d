"""Tags that hang on a thing or stand on its shelf: kind of copy first, the number in clear beside its code."""

from abc import ABC, abstractmethod
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from reportlab.lib.units import mm

from records.pdf import fonts, label_text, theme
from records.pdf.codes import LEAST_MM, draw_qr
from records.pdf.label_text import Words

MARGIN, LEAST_MARGIN = 2.5 * mm, 0.3 * mm
INSET = 1.2 * mm  # of the frame of an unmarked copy's tag
LARGEST = 35 * mm  # a code need not grow with its tag
FRAME = 15.0  # room of the framed word
UNMARKED = "UNMARKED COPY, not to leave the workshop"
Layout = tuple[list[Words], str]  # the words, and the word to be framed beneath them


class CodedTag(ABC):
    """What every tag with a code shares; on a small label it leaves out all but kind and number."""

    number: str
    code: str

    @abstractmethod
    def layouts(self) -> Iterator[Layout]:
        """The fullest first; kind and number stand in each."""

    def room(self, width: float, height: float, framed: bool) -> tuple[float, float]:
        """What the words may fill beside the code and above the framed word."""
        margin = _margin(height)
        return width - _side(width, height) - 3 * margin, height - 2 * margin - (FRAME if framed else 0.0)

    def fits(self, size: tuple[float, float], least_pct: int) -> bool:
        """Whether all of it stands on a tag of this size, no smaller than a part of the sizes it is meant to have."""
        words, framed = next(iter(self.layouts()))
        return _fitting(words, self.room(*size, bool(framed)), least_pct) is not None

    def draw(
        self, canvas: Any, x: float, y: float, width: float, height: float, *, whole: bool = False
    ) -> None:  # `whole`: nothing may be left out
        margin, side = _margin(height), _side(width, height)
        draw_qr(canvas, self.code, x + width - margin - side, y + (height - side) / 2, side)
        parts, framed, room = self._chosen(width, height, whole)
        label_text.draw(canvas, parts, x + margin, y + height - margin, room)
        if framed:
            _framed_word(canvas, framed, x + margin, y + margin, room)

    def _chosen(self, width: float, height: float, whole: bool) -> tuple[list[tuple[Any, float]], str, float]:
        words: list[Words] = []
        layouts = list(self.layouts())
        for words, framed in layouts[:1] if whole else layouts:
            room = self.room(width, height, bool(framed))
            if (parts := _fitting(words, room)) is not None:
                return parts, framed, room[0]
        # Not even the barest; the refusal names the words.
        room = self.room(width, height, framed=False)
        return label_text.fit(words, *room), "", room[0]


@dataclass(frozen=True)
class ObjectTag(CodedTag):
    """A thing's tag; `kind` is the kind of copy and its date, `word` stays empty for an original."""

    number: str
    kind: str
    title: str
    code: str
    word: str = "COPY"
    limits: bool = False  # the title holds limits of use, which no small label may leave out

    def layouts(self) -> Iterator[Layout]:
        kind, number = Words(self.kind, 9.5, fonts.SANS_BOLD), Words(self.number, 15, fonts.SANS_BOLD, after=2)
        yield [kind, number, Words(self.title, 8.5)], self.word
        yield [kind, number, Words(self.title, 8.5)], ""
        if not self.limits:
            yield [kind, number], ""


@dataclass(frozen=True)
class ShelfTag(CodedTag):
    """For the shelf: read from a step away, so the number is large; the place is where the thing belongs."""

    number: str
    kind: str
    title: str
    code: str
    place: str = ""

    def layouts(self) -> Iterator[Layout]:
        kind, number = Words(self.kind, 9.5, fonts.SANS_BOLD), Words(self.number, 20, fonts.SANS_BOLD, after=2)
        place = Words(self.place, 8, colour=theme.LIGHTER)
        yield [kind, number, Words(self.title, 8.5), place], ""
        yield [kind, number, place], ""
        yield [kind, number], ""


@dataclass(frozen=True)
class SaleTicket(CodedTag):
    """What hangs on a copy for sale: that it is a museum copy, how it is marked, what it repeats."""

    number: str
    kind: str
    marked: str
    after: str
    code: str

    def layouts(self) -> Iterator[Layout]:
        kind, number = Words(self.kind, 10.5, fonts.SANS_BOLD), Words(self.number, 9.5, fonts.SANS_BOLD)
        marked = Words(self.marked, 8.5, after=2)
        yield [kind, marked, Words(self.after, 8.5), number], ""
        yield [kind, marked, number], ""
        yield [kind, number], ""


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

    def fits(self, size: tuple[float, float], least_pct: int) -> bool:
        return _fitting(self.words, self.room(*size), least_pct) is not None

    def draw(self, canvas: Any, x: float, y: float, width: float, height: float, *, whole: bool = True) -> None:
        canvas.setStrokeColor(theme.INK)
        canvas.setLineWidth(2.4)
        canvas.rect(x + INSET, y + INSET, width - 2 * INSET, height - 2 * INSET)
        edge, room = INSET + MARGIN, self.room(width, height)
        label_text.draw(canvas, label_text.fit(self.words, *room), x + edge, y + height - edge, room[0])


Tag = CodedTag | UnmarkedTag


def _margin(height: float) -> float:
    """Less on a label that has hardly room for the code."""
    return min(MARGIN, max((height - LEAST_MM * mm) / 2, LEAST_MARGIN))


def _side(width: float, height: float) -> float:
    return min(max(LEAST_MM * mm, min(height - 2 * _margin(height), width * 0.36)), LARGEST)


def _fitting(words: list[Words], room: tuple[float, float], least_pct: int = 40) -> list[tuple[Any, float]] | None:
    try:
        return label_text.fit(words, *room, least_pct)
    except label_text.LabelTooFull:
        return None


def _framed_word(canvas: Any, word: str, x: float, y: float, room: float) -> None:
    (paragraph, _), *_ = label_text.fit([Words(word, 9, fonts.SANS_BOLD)], room - 8, 14)
    wide = fonts.width(word, fonts.SANS_BOLD, paragraph.style.fontSize) + 8
    canvas.setStrokeColor(theme.INK)
    canvas.setLineWidth(0.9)
    canvas.rect(x, y, wide, 12.5)
    label_text.draw(canvas, [(paragraph, 0)], x + 4, y + 12.2, room)
