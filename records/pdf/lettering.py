"""One line of text on a canvas, in whatever faces its characters need."""

from typing import Any

from records.pdf import fonts, glyphs


def draw_text(canvas: Any, x: float, y: float, text: str, face: str, size: float, anchor: str = "start") -> float:
    """One line of text in whatever faces it needs; gives its width."""
    parts = glyphs.runs(text, face)
    whole = glyphs.runs_width(parts, size)
    x -= {"start": 0.0, "middle": whole / 2, "end": whole}[anchor]
    for run in parts:
        canvas.setFont(run.face, size * run.scale)
        canvas.drawString(x, y + size * run.rise, run.text)
        x += fonts.width(run.text, run.face, size * run.scale)
    return whole


def shortened(text: str, face: str, size: float, width: float) -> str:
    """The text, cut with an ellipsis where it is wider than its place."""
    if glyphs.runs_width(glyphs.runs(text, face), size) <= width:
        return text
    while text and glyphs.runs_width(glyphs.runs(text + "…", face), size) > width:
        text = text[:-1]
    return text.rstrip() + "…"
