"""The sheets that papers are printed on: width and height in points (ISO 216; ANSI/ASME Y14.1, 8.5 × 11 in)."""

POINTS_PER_MM = 72 / 25.4

PAGE_SIZES: dict[str, tuple[float, float]] = {
    "A4": (210 * POINTS_PER_MM, 297 * POINTS_PER_MM),
    "Letter": (8.5 * 72, 11.0 * 72),
}


def page_size(asked: str) -> str:
    """The size that was asked for; the first one where nobody did, or for what is none.

    >>> page_size("Letter"), page_size("")
    ('Letter', 'A4')
    """
    return asked if asked in PAGE_SIZES else next(iter(PAGE_SIZES))
