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

# Millimetres of lower-case height per metre of viewing distance, in good and in poor light (AS 1319 chart).
X_HEIGHT_MM_PER_M = {"good": 4.0, "poor": 6.0}
SANS_X_HEIGHT_EM = 0.486  # Source Sans
_POINT_MM = 25.4 / 72


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


def reading_size(distance_m: float, light: str = "good") -> float:
    """Type size in points that is read from a distance: x-height = mm/m · distance."""
    return X_HEIGHT_MM_PER_M[light] * distance_m / (SANS_X_HEIGHT_EM * _POINT_MM)


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
    """The words at the largest scale that fits, no word cut in two."""
    for percent in range(100, least_pct - 1, -4):
        scale = percent / 100
        if min(part.size for part in words) * scale < SMALLEST:
            break
        parts = paragraphs(words, scale)
        if _narrow_enough(words, scale, width) and height_of(parts, width) <= height:
            return parts
    raise LabelTooFull(
        f"“{words[0].text} …” does not fit its label in a size that can be read. "
        "Shorten the text or take a larger label."
    )


def draw(canvas: Any, parts: list[tuple[Any, float]], x: float, top: float, width: float) -> float:
    """Draw downwards from `top`; the answer is where the text ends."""
    for paragraph, after in parts:
        _, height = paragraph.wrap(width, 10_000)
        paragraph.drawOn(canvas, x, top - height)
        top -= height + after
    return top
