"""Cutting a text where a reader takes breath."""

import re

# A full stop inside a number such as OVM.1931.0044 is no pause.
_BREATH = re.compile(r"[.,;:!?](?=\s|$)|[()\[\]/·•—–\n]+|\s-\s")
# A year that is not part of a number such as OVM.1931.0044.
_YEAR = re.compile(r"(?<![\w.\-/])(1\d{3}|20\d{2})(?!\w|[.\-/]\d)")


def clauses(text: str) -> list[str]:
    """The stretches between punctuation marks, line breaks included."""
    return [clause.strip() for clause in _BREATH.split(text) if clause.strip()]


def says(word: str, text: str) -> bool:
    return re.search(rf"\b(?:{word})\b", text, re.IGNORECASE) is not None


def first_year(text: str) -> str:
    """The first year in a text, or "".

    >>> first_year("Original OVM.1931.0044, cast 1624")
    '1624'
    """
    found = _YEAR.search(text)
    return found.group(1) if found else ""
