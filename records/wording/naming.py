"""File names that say, before anything else, that the picture or paper shows a copy."""

import re
import unicodedata


def _plain(text: str) -> str:
    """Letters and digits of the plain alphabet, joined by hyphens; dots of a number stay."""
    ascii_text = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode()
    return re.sub(r"[^A-Za-z0-9.]+", "-", ascii_text).strip("-.")


def file_name(number: str, kind: str, part: str = "", suffix: str = "") -> str:
    """Kind of copy, number, then which view or paper.

    >>> file_name("R.2026.1", "Electrotype copy", "obverse", "jpg")
    'electrotype-copy_R.2026.1_obverse.jpg'
    """
    stem = "_".join(filter(None, (_plain(kind).lower(), _plain(number), _plain(part).lower())))
    return f"{stem}.{suffix.lstrip('.')}" if suffix else stem
