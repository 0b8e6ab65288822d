"""Text that must fit its label: set smaller down to a limit, and refused when it still does not fit."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from reportlab.lib.colors import Color
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Paragraph

from records.pdf import fonts, glyphs, theme
from records.pdf.refusal import CannotPrint

SMALLEST = 5.5  # points
LEADING = 1.22


class LabelTooFull(CannotPrint):
    """The text cannot be read at the size that would make it fit."""


@dataclass(frozen=True)
class Words:
    """Some words of a label with their face and size."""

    text: str
    size: float
    face: str = fonts.SANS
    after: float = 1.5
    colour: Color = theme.INK


def paragraphs(words: Sequence[Words], scale: float = 1.0) -> list[tuple[Any, float]]:
    """A paragraph and the space after it for each of the words that are not empty."""
    answer = []
    for part in words:
        if part.text.strip():
            size = part.size * scale
            style = ParagraphStyle("", fontName=part.face, fontSize=size, leading=size * LEADING, textColor=part.colour)
            answer.append((Paragraph(glyphs.markup(part.text, part.face, size), style), part.after * scale))
    return answer


def height_of(parts: list[tuple[Any, float]], width: float) -> float:
    return float(sum(paragraph.wrap(width, 10_000)[1] + after for paragraph, after in parts))


def _narrow_enough(words: Sequence[Words], scale: float, width: float) -> bool:
    longest = [w for part in words for w in part.text.split()]
    sizes = [part.size * scale for part in words for _ in part.text.split()]
    faces = [part.face for part in words for _ in part.text.split()]
    return all(
        glyphs.runs_width(glyphs.runs(word, face), size) <= width
        for word, face, size in zip(longest, faces, sizes, strict=True)
    )


def fit(words: Sequence[Words], width: float, height: float, least_pct: int = 40) -> list[tuple[Any, float]]:
    """The words at the largest scale that fits, no word cut in two; found by halving, for a sheet has a thousand."""
    least = max(least_pct / 100, SMALLEST / min(part.size for part in words))
    scales = [percent / 100 for percent in range(100, least_pct - 1, -4) if percent / 100 >= least - 1e-9]
    best: list[tuple[Any, float]] | None = None
    low, high = 0, len(scales)
    while low < high:
        middle = (low + high) // 2
        parts = _set_in(words, scales[middle], width, height)
        best, low, high = (parts, low, middle) if parts is not None else (best, middle + 1, high)
    if best is not None:
        return best
    raise LabelTooFull(
        f"“{words[0].text} …” does not fit its label in a size that can be read. "
        "Shorten the text or take a larger label."
    )


def _set_in(words: Sequence[Words], scale: float, width: float, height: float) -> list[tuple[Any, float]] | None:
    if not _narrow_enough(words, scale, width):
        return None
    parts = paragraphs(words, scale)
    return parts if height_of(parts, width) <= height else None


def draw(canvas: Any, parts: list[tuple[Any, float]], x: float, top: float, width: float) -> float:
    """Draw downwards from `top`; the answer is where the text ends."""
    for paragraph, after in parts:
        _, height = paragraph.wrap(width, 10_000)
        paragraph.drawOn(canvas, x, top - height)
        top -= height + after
    return top
