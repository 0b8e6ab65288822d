"""The sheets that papers are printed on: width and height in points (ISO 216; ANSI/ASME Y14.1, 8.5 × 11 in)."""

POINTS_PER_MM = 72 / 25.4

PAGE_SIZES: dict[str, tuple[float, float]] = {
    "A4": (210 * POINTS_PER_MM, 297 * POINTS_PER_MM),
    "Letter": (8.5 * 72, 11.0 * 72),
}
