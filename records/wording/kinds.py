"""The kinds of copy, as data: what a label may begin with."""

import re
import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from records.wording.facts import CopyFacts

OWN_KINDS = Path(__file__).with_name("kinds.toml")


@dataclass(frozen=True)
class Kind:
    words: str
    technique: str
    generations: str
    skin: str = ""
    one_sided: bool = False
    historic: bool = False
    default: bool = False

    def fits(self, piece: CopyFacts) -> bool:
        """May this piece be called so? The words may say less about the surface, never something untrue."""
        right_generation = self.generations in ("any", "more" if piece.is_copy_of_copy else "one")
        return (
            self.historic == piece.historic
            and self.technique in ("any", piece.technique)
            and (piece.historic or right_generation)
            and self.skin in ("", piece.skin)
            and (piece.one_sided or not self.one_sided)
        )


@cache
def load_kinds(path: Path = OWN_KINDS) -> tuple[Kind, ...]:
    return tuple(Kind(**row) for row in tomllib.loads(path.read_text(encoding="utf-8"))["kind"])


def kind_of_text(text: str) -> Kind | None:
    """The kind that a text begins with, the longest that matches whole words."""
    for kind in sorted(load_kinds(), key=lambda kind: -len(kind.words)):
        if re.match(rf"{re.escape(kind.words)}(?![\w-])", text.strip(), re.IGNORECASE):
            return kind
    return None


def fitting_kinds(piece: CopyFacts) -> list[Kind]:
    """The kinds that are true of a piece, the best first."""
    fitting = [kind for kind in load_kinds() if kind.fits(piece)]
    return sorted(fitting, key=lambda kind: (kind.one_sided != piece.one_sided, not kind.default))
