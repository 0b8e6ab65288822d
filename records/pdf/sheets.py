"""Label sheets as data: common grids of self-adhesive sheets, adjustable for printers that feed askew."""

from collections.abc import Iterator
from dataclasses import dataclass

from reportlab.lib.units import inch, mm

from records.pdf.page_sizes import PAGE_SIZES

MOST_NUDGE = 5 * mm


@dataclass(frozen=True)
class LabelSheet:
    """A grid of labels; all lengths in points."""

    name: str
    page: str
    width: float
    height: float
    columns: int
    rows: int
    left: float
    top: float
    gap_x: float = 0.0
    gap_y: float = 0.0

    def per_page(self) -> int:
        return self.columns * self.rows

    def places(
        self, count: int, skip: int = 0, nudge: tuple[float, float] = (0.0, 0.0)
    ) -> Iterator[tuple[int, float, float]]:
        """Page from 0 and lower left corner of each label; the first `skip` labels are used up."""
        if max(abs(nudge[0]), abs(nudge[1])) > MOST_NUDGE:
            raise ValueError("A sheet is shifted by at most 5 mm; a larger shift means the wrong sheet is chosen.")
        _, page_height = PAGE_SIZES[self.page]
        for index in range(skip, skip + count):
            page, on_page = divmod(index, self.per_page())
            row, column = divmod(on_page, self.columns)
            x = self.left + column * (self.width + self.gap_x) + nudge[0]
            y = page_height - self.top - row * (self.height + self.gap_y) - self.height + nudge[1]
            yield page, x, y


SHEETS: dict[str, LabelSheet] = {
    sheet.name: sheet
    for sheet in (
        LabelSheet("A4, 24 of 70 × 37 mm", "A4", 70 * mm, 37 * mm, 3, 8, 0, 0.5 * mm),
        LabelSheet("A4, 21 of 63.5 × 38.1 mm", "A4", 63.5 * mm, 38.1 * mm, 3, 7, 7.2 * mm, 15.15 * mm, 2.5 * mm),
        LabelSheet("A4, 14 of 99.1 × 38.1 mm", "A4", 99.1 * mm, 38.1 * mm, 2, 7, 4.65 * mm, 15.15 * mm, 2.5 * mm),
        LabelSheet(
            "Letter, 30 of 2⅝ × 1 in",
            "Letter",
            2.625 * inch,
            inch,
            3,
            10,
            0.1875 * inch,
            0.5 * inch,
            0.125 * inch,
        ),
        LabelSheet(
            "Letter, 10 of 4 × 2 in",
            "Letter",
            4 * inch,
            2 * inch,
            2,
            5,
            0.156 * inch,
            0.5 * inch,
            0.1875 * inch,
        ),
    )
}
