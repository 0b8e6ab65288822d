"""Signs that nobody sees and nobody types: they hide in what is pasted, and change what the others seem to say."""

import re
import unicodedata

from django.core.exceptions import ValidationError

# Control characters but for tab and line ends; the two signs that turn the direction of all that follows; and what
# Unicode calls no character at all. Marks of Hebrew and Arabic writing stay: inscriptions are copied with them.
UNSEEN = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u202d\u202e\ufff9-\ufffb\ufffe\uffff]")
SHOWN = 12
LONGEST = 60_000  # characters: thirty pages; five hundred readings pasted at once


def refuse_unseen(text: object) -> None:
    """For any field of text."""
    found = UNSEEN.search(text) if isinstance(text, str) else None
    if found:
        before = text[max(0, found.start() - SHOWN) : found.start()].strip()
        where = f"after “{before}”" if before else "at the beginning"
        raise ValidationError(
            f"A sign that cannot be seen (U+{ord(found.group()):04X}) stands {where}: type that place anew.",
            code="unseen",
        )


def refuse_endless(text: object) -> None:
    """Fields of text that name no end of their own have this one."""
    if isinstance(text, str) and len(text) > LONGEST:
        raise ValidationError(
            f"These are {len(text)} characters, and {LONGEST} are kept: what is longer belongs in a file.",
            code="endless",
        )


def hidden_in(text: str) -> str:
    """The first sign without width or with a direction, which no number may hold; "" if there is none.

    >>> hidden_in("OVM.1931.0044"), hidden_in("OVM\u200b.1931") == "\u200b"
    ('', True)
    """
    return next((sign for sign in text if unicodedata.category(sign) in {"Cf", "Co", "Cn"}), "")
