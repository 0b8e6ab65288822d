"""QR codes as one filled path, with their quiet zone, never smaller than a phone reads off paper."""

from typing import Any

import segno
from reportlab.lib.units import mm
from reportlab.platypus import Flowable

from records.pdf import theme

QUIET = 4  # modules, ISO/IEC 18004
LEAST_MM = 12.0
MASK = 2  # a fixed mask is a fifth of the work; every mask is decodable by design


def modules(text: str) -> list[list[bool]]:
    """The symbol without its quiet zone, row by row, True is dark."""
    code = segno.make_qr(text, error="m", mask=MASK)
    return [[bool(module) for module in row] for row in code.matrix]


def draw_qr(canvas: Any, text: str, x: float, y: float, side: float) -> None:
    """Draw the code with its quiet zone into a square whose lower left corner is x, y (points)."""
    if side < LEAST_MM * mm - 0.01:
        raise ValueError(f"A QR code of {side / mm:.1f} mm does not scan off paper; give it {LEAST_MM:.0f} mm or more.")
    rows = modules(text)
    step = side / (len(rows) + 2 * QUIET)
    canvas.setFillColor(theme.WHITE)
    canvas.rect(x, y, side, side, stroke=0, fill=1)
    path = canvas.beginPath()
    for index, row in enumerate(rows):
        top = y + side - (QUIET + index + 1) * step
        for start, length in _dark_stretches(row):
            path.rect(x + (QUIET + start) * step, top, length * step, step)
    canvas.setFillColorRGB(0, 0, 0)
    canvas.drawPath(path, stroke=0, fill=1)


def _dark_stretches(row: list[bool]) -> list[tuple[int, int]]:
    stretches, start = [], None
    for index, dark in enumerate([*row, False]):
        if dark and start is None:
            start = index
        elif not dark and start is not None:
            stretches.append((start, index - start))
            start = None
    return stretches


class QrCode(Flowable):
    """A QR code as part of a paper."""

    def __init__(self, text: str, side: float = 16 * mm) -> None:
        super().__init__()
        self.text = text
        self.width = self.height = side

    def wrap(self, *_available: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        draw_qr(self.canv, self.text, 0, 0, self.width)
