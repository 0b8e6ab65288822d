"""The faces that papers are set in: read when the first paper asks for one, since no page needs them."""

from functools import cache
from pathlib import Path

import font_source_sans_pro
import font_source_serif_pro
import reportlab

from records.pdf.defaults import FAMILIES

(SANS, SANS_BOLD, SANS_ITALIC), (SERIF, SERIF_BOLD, SERIF_ITALIC) = FAMILIES
LAST = "Vera"

_SANS_FILES = Path(font_source_sans_pro.font_directory)
_SERIF_FILES = Path(font_source_serif_pro.font_directory)
FILES: dict[str, Path] = {
    SANS: _SANS_FILES / "SourceSansPro-Regular.ttf",
    SANS_BOLD: _SANS_FILES / "SourceSansPro-Semibold.ttf",
    SANS_ITALIC: _SANS_FILES / "SourceSansPro-It.ttf",
    SERIF: _SERIF_FILES / "SourceSerifPro-Regular.ttf",
    SERIF_BOLD: _SERIF_FILES / "SourceSerifPro-Semibold.ttf",
    SERIF_ITALIC: _SERIF_FILES / "SourceSerifPro-It.ttf",
    LAST: Path(reportlab.__file__).parent / "fonts" / "Vera.ttf",
}

# Where a face lacks a character, the next one of its chain is asked.
CHAINS: dict[str, tuple[str, ...]] = {
    SANS: (SANS, SERIF, LAST),
    SANS_BOLD: (SANS_BOLD, SERIF_BOLD, SANS, SERIF, LAST),
    SANS_ITALIC: (SANS_ITALIC, SANS, SERIF, LAST),
    SERIF: (SERIF, SANS, LAST),
    SERIF_BOLD: (SERIF_BOLD, SANS_BOLD, SERIF, SANS, LAST),
    SERIF_ITALIC: (SERIF_ITALIC, SERIF, SANS, LAST),
}


@cache
def covered() -> dict[str, frozenset[int]]:
    """The characters of each face; asking registers them, once, before any canvas exists."""
    from reportlab.graphics import shapes
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    found: dict[str, frozenset[int]] = {}
    for name, file in FILES.items():
        font = TTFont(name, str(file))
        pdfmetrics.registerFont(font)
        found[name] = frozenset(font.face.charToGlyph)
    shapes.STATE_DEFAULTS["fontName"] = SANS
    return found


def width(text: str, face: str, size: float) -> float:
    """Printed width in points of text that the face covers."""
    from reportlab.pdfbase import pdfmetrics

    covered()
    return float(pdfmetrics.stringWidth(text, face, size))
