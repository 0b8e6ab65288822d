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
        if max(abs(nudge[0]), abs(nudge[1])) > MOST_NUDGE + 0.01:
            raise ValueError("A sheet is shifted by at most 5 mm; a larger shift means the wrong sheet is chosen.")
        _, page_height = PAGE_SIZES[self.page]
        for index in range(skip, skip + count):
            page, on_page = divmod(index, self.per_page())
            row, column = divmod(on_page, self.columns)
            x = self.left + column * (self.width + self.gap_x) + nudge[0]
            y = page_height - self.top - row * (self.height + self.gap_y) - self.height + nudge[1]
            yield page, x, y


Grid = tuple[float, float, int, int, float, float, float, float]
# width, height, columns, rows, left, top, gap x, gap y: the 63.5 × 38.1 sheet was seen, the others are checked by sums.
_A4_MM: tuple[Grid, ...] = (
    (70, 37, 3, 8, 0, 0.5, 0, 0),
    (63.5, 38.1, 3, 7, 7.2, 15.15, 2.5, 0),
    (63.5, 33.9, 3, 8, 7.25, 12.9, 2.5, 0),
    (38.1, 21.2, 5, 13, 4.75, 10.7, 2.5, 0),
    (52.5, 29.7, 4, 10, 0, 0, 0, 0),
    (99.1, 38.1, 2, 7, 4.65, 15.15, 2.5, 0),
    (99.1, 67.7, 2, 4, 4.65, 13.1, 2.5, 0),
)
_LETTER_IN: tuple[tuple[str, Grid], ...] = (
    ("2⅝ × 1", (2.625, 1, 3, 10, 0.1875, 0.5, 0.125, 0)),
    ("1¾ × ½", (1.75, 0.5, 4, 20, 0.3, 0.5, 0.3, 0)),
    ("4 × 1", (4, 1, 2, 10, 0.156, 0.5, 0.1875, 0)),
    ("4 × 2", (4, 2, 2, 5, 0.156, 0.5, 0.1875, 0)),
)


def _sheet(name: str, page: str, unit: float, grid: Grid) -> LabelSheet:
    width, height, columns, rows, left, top, gap_x, gap_y = grid
    scaled = (length * unit for length in (left, top, gap_x, gap_y))
    return LabelSheet(f"{page}, {columns * rows} of {name}", page, width * unit, height * unit, columns, rows, *scaled)


SHEETS: dict[str, LabelSheet] = {
    sheet.name: sheet
    for sheet in (
        *(_sheet(f"{grid[0]:g} × {grid[1]:g} mm", "A4", mm, grid) for grid in _A4_MM),
        *(_sheet(f"{name} in", "Letter", inch, grid) for name, grid in _LETTER_IN),
    )
}
