"""Every character finds a face that has it, or is reported before anything is printed."""

import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import groupby
from xml.sax.saxutils import escape

from records.pdf import fonts
from records.pdf.refusal import CannotPrint

# Characters that no bundled face has, spelt with one that they all have: (spelling, size, rise in em).
SPELT: dict[str, tuple[str, float, float]] = {
    "⁺": ("+", 0.62, 0.36),
    "⁻": ("−", 0.62, 0.36),
    "ᴀ": ("A", 0.8, 0.0),  # of Nᴀ
    "●": ("•", 1.6, 0.0),
    "○": ("◌", 1.0, 0.0),
    "⇒": ("→", 1.0, 0.0),
    "↦": ("→", 1.0, 0.0),
    "‐": ("-", 1.0, 0.0),
    "‑": ("-", 1.0, 0.0),
    "\u2009": ("\u00a0", 0.6, 0.0),  # thin spaces, which a paragraph would widen and break at
    "\u202f": ("\u00a0", 0.6, 0.0),
    "\t": (" ", 1.0, 0.0),
    "\r": ("", 1.0, 0.0),
}
INVISIBLE = "\u00ad\u200b\u200e\u200f\u2060\ufeff"


class MissingGlyph(CannotPrint):
    """A text holds characters that no face of the register can print."""

    def __init__(self, text: str, characters: str) -> None:
        self.text, self.characters = text, characters
        named = ", ".join(f"“{c}” (U+{ord(c):04X} {unicodedata.name(c, 'unnamed')})" for c in characters)
        super().__init__(
            f"No typeface here has {named}, found in “{text[:60]}”. It would print as an empty box. "
            "Write the word in Latin, Greek or Cyrillic letters, or leave the character out."
        )


@dataclass(frozen=True)
class Run:
    """A stretch of text in one face; size and rise are relative to the size of the line."""

    face: str
    text: str
    scale: float = 1.0
    rise: float = 0.0


def _face_for(character: str, face: str) -> str | None:
    return next((f for f in fonts.CHAINS[face] if ord(character) in fonts.covered()[f]), None)


def _clean(text: str) -> str:
    composed = unicodedata.normalize("NFC", text)
    return "".join(c for c in composed if c not in INVISIBLE and (c in "\n\t\r" or ord(c) >= 32))


def missing(text: str) -> str:
    """The characters of a text that cannot be printed, each once, in order."""
    wanted = (c for c in _clean(text) if c != "\n" and c not in SPELT)
    return "".join(dict.fromkeys(c for c in wanted if _face_for(c, fonts.SANS) is None))


def _settings(text: str, face: str) -> Iterator[Run]:
    for character in text:
        spelling, scale, rise = SPELT.get(character, (character, 1.0, 0.0))
        for c in spelling:
            yield Run(_face_for(c, face) or face, c, scale, rise)


def runs(text: str, face: str) -> list[Run]:
    """The text cut into stretches that one face can print; MissingGlyph when no face can."""
    return list(_runs(text, face))


@lru_cache(maxsize=4096)  # the words of a label are tried in several sizes, and stand on a thousand of them
def _runs(text: str, face: str) -> tuple[Run, ...]:
    lost = missing(text)
    if lost:
        raise MissingGlyph(text, lost)
    grouped = groupby(_settings(_clean(text), face), key=lambda r: (r.face, r.scale, r.rise))
    return tuple(Run(f, "".join(r.text for r in part), scale, rise) for (f, scale, rise), part in grouped)


def markup(text: str, face: str, size: float) -> str:
    """The text as escaped paragraph markup, with a font tag wherever another face or size is needed."""
    lines = []
    for line in text.split("\n"):
        parts = []
        for run in runs(line, face):
            safe = escape(run.text)
            if run.rise:
                safe = f'<super size="{size * run.scale:.2f}" rise="{size * run.rise:.2f}">{safe}</super>'
            if run.face != face or run.scale != 1:
                safe = f'<font name="{run.face}" size="{size * run.scale:.2f}">{safe}</font>'
            parts.append(safe)
        lines.append("".join(parts))
    return "<br/>".join(lines)


def runs_width(parts: list[Run], size: float) -> float:
    return sum(fonts.width(r.text, r.face, size * r.scale) for r in parts)
