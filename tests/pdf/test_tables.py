"""Tables over many pages, and headings that never stand alone at the foot."""

from dataclasses import replace

from records.pdf import blocks as b
from records.pdf.column_widths import ColumnText, column_widths
from records.pdf.document import build
from tests.pdf import reading, specimens
from tests.pdf.specimen_condition import CONDITION

COLUMNS = (b.Column("Local time"), b.Column("Charge", "Ah", "right"), b.Column("Thickness", "mm", "right"))


def rows(count: int) -> tuple[tuple[str | b.Cell, ...], ...]:
    return tuple((f"row {n:03d}", f"{n * 1.1:.2f}", b.Cell(f"{n / 100:.2f}", calculated=True)) for n in range(count))


def paper(*blocks: b.Block) -> list[str]:
    return reading.pages(build(replace(CONDITION, summary=""), list(blocks), b"{}", specimens.ISSUED))


def test_the_heading_with_its_units_is_repeated_on_every_page() -> None:
    pages = paper(b.FigureTable(COLUMNS, rows(300)))
    assert len(pages) > 5
    assert all("Charge Ah" in page and "Thickness mm" in page for page in pages)
    assert sum(page.count("row ") for page in pages) == 300


def test_calculated_cells_are_explained_in_words_below() -> None:
    assert "calculated, not measured" in paper(b.FigureTable(COLUMNS, rows(2)))[0]
    assert "not measured" not in paper(b.FigureTable(COLUMNS[:2], (("a", "1"),)))[0]


def test_a_calculated_column_says_so_in_its_heading() -> None:
    assert (
        "Mass g, calculated" in paper(b.FigureTable((b.Column("Mass", "g", "right", calculated=True),), (("1",),)))[0]
    )


def test_an_empty_cell_is_a_dash() -> None:
    assert "row – " in paper(b.FigureTable(COLUMNS[:2], (("row", ""),)))[0] + " "


def test_a_heading_is_never_alone_at_the_foot() -> None:
    for lines in range(28, 52):
        pages = paper(
            b.Prose("line\n" * lines),
            b.Heading("Weighing"),
            b.FigureTable(COLUMNS, rows(9), caption="Shells"),
        )
        on = next(page for page in pages if "Weighing" in page)
        assert "Shells" in on, lines
        assert "row 001" in on, lines


def test_signatures_are_not_torn_apart() -> None:
    for lines in range(36, 50):
        pages = paper(b.Prose("line\n" * lines), b.Signatures((b.Signer("Tobias Marrowby", "Conservator"),)))
        on = next(page for page in pages if "Tobias Marrowby" in page)
        assert "Conservator" in on, lines


def test_figures_keep_their_width_and_prose_gives_way() -> None:
    figures = ColumnText(("Charge", "Ah"), ("1234567.89",), swatch=False, unbroken=True)
    prose = ColumnText(("Note",), ("many words " * 80,), swatch=False, unbroken=False)
    narrow, wide = column_widths([figures, prose], 300.0, 10.0)
    assert narrow > 50
    assert narrow + wide == 300.0
