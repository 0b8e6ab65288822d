"""What belongs together on paper stays together: number and unit, note and table, short prose, a line of descent."""

from dataclasses import replace

import pytest

from records.pdf import blocks as b
from records.pdf.document import build
from records.wording.binding import NO_BREAK, bound
from tests.pdf import reading, specimens
from tests.pdf.specimen_condition import CONDITION

COLUMNS = (b.Column("Place"), b.Column("Thickness", "mm", "right"))
FILLERS = range(44)  # lines above: somewhere among them the page ends inside what is tested


def paper(*blocks: b.Block, **fields: str) -> list[str]:
    return reading.pages(build(replace(CONDITION, summary="", **fields), list(blocks), b"{}", specimens.ISSUED))


def below(lines: int, *blocks: b.Block) -> list[str]:
    return paper(b.Prose("\n\n".join("filler" for _ in range(lines)) + " " * 701), *blocks)


def page_of(pages: list[str], words: str) -> int:
    return next(number for number, page in enumerate(pages) if words in page)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("for 3 h 10 min", "for 3~h 10~min"),
        ("a coat of 12 Ω", "a coat of 12~Ω"),
        ("an acid of 5 % for 60 s", "an acid of 5~% for 60~s"),
        ("at 1.5 A/dm² and 22 °C", "at 1.5~A/dm² and 22~°C"),
        ("taken 1 April 2026", "taken 1~April 2026"),
        ("(8.714 ± 0.011) g", "(8.714~±~0.011)~g"),
        ("14 bends, 2 moulds, 3 spots", "14 bends, 2 moulds, 3 spots"),
    ],
)
def test_a_number_keeps_its_unit_on_the_line(text: str, expected: str) -> None:
    assert bound(text).replace(NO_BREAK, "~") == expected


@pytest.mark.parametrize("lines", FILLERS)
def test_short_prose_stays_on_the_page_of_its_heading(lines: int) -> None:
    care = b.Prose("Keep it dry.\n\nLook at it again in a year.\n\nThis piece must always be described as a copy.")
    pages = below(lines, b.Heading("Care"), care)
    assert page_of(pages, "Care") == page_of(pages, "always be described")


@pytest.mark.parametrize("lines", FILLERS)
def test_the_note_of_a_table_stays_with_its_last_two_rows(lines: int) -> None:
    rows = tuple((f"point {n:02d}", "0.30") for n in range(12))
    pages = below(lines, b.FigureTable(COLUMNS, rows, note="Counted from the face."))
    assert page_of(pages, "Counted from the face.") == page_of(pages, "point 11") == page_of(pages, "point 10")


@pytest.mark.parametrize("lines", FILLERS)
def test_a_small_table_is_not_torn_and_its_lead_stays_with_it(lines: int) -> None:
    rows = tuple((f"point {n:02d}", "0.30") for n in range(4))
    pages = below(lines, b.Heading("Walls"), b.Prose("Seven were taken.", leads=True), b.FigureTable(COLUMNS, rows))
    assert len({page_of(pages, words) for words in ("Walls", "Seven were taken", "point 00", "point 03")}) == 1


@pytest.mark.parametrize("lines", FILLERS)
def test_a_line_of_descent_is_not_torn(lines: int) -> None:
    pieces = [b.Piece(f"PIECE.2026.{n}", "a plaster cast of the life mask of a sitter") for n in range(7)]
    chain = [part for piece in pieces for part in (piece, b.Link("moulded"))][:-1]
    pages = below(lines, b.Heading("Line of descent"), b.DescentStrip(tuple(chain)))
    assert page_of(pages, "Line of descent") == page_of(pages, "PIECE.2026.0") == page_of(pages, "PIECE.2026.6")


def test_two_last_rows_higher_than_a_page_may_part() -> None:
    long = "A long account of what was seen. " * 90
    assert len(paper(b.FigureTable((b.Column("Seen"),), ((long,), (long,), (long,)), note="The end."))) > 1


def test_an_appendix_follows_on_where_half_a_page_is_left() -> None:
    assert len(paper(b.Prose("Short."), b.Appendix("A", "Behind it"), b.Prose("Words."))) == 1
    pages = below(30, b.Appendix("A", "Behind it"), b.Prose("Words."))
    assert page_of(pages, "Behind it") == 1


def test_head_and_foot_of_every_page_say_that_it_is_a_copy() -> None:
    rows = tuple((f"point {n:02d}", "0.30") for n in range(90))
    pages = paper(b.FigureTable(COLUMNS, rows), named="copy R.2026.2")
    assert len(pages) > 2
    assert all(page.count("copy R.2026.2 ·") == 2 for page in pages)


@pytest.mark.parametrize("lines", FILLERS)
def test_a_signature_stands_on_the_page_of_what_is_signed(lines: int) -> None:
    signed = b.Signatures((b.Signer("Corvin Aldersey", "Registrar", "2 April 2026"), b.Signer("", "Bench")))
    pages = below(lines, b.Heading("Care"), b.Caution("Keep it dry."), signed)
    assert page_of(pages, "Care") == page_of(pages, "Keep it dry") == page_of(pages, "Registrar")


FACTS = tuple(b.Fact(f"Label {number}", f"value {number}") for number in range(20))


@pytest.mark.parametrize("lines", FILLERS)
def test_a_cover_ends_its_page_between_two_facts_only(lines):
    pages = below(lines, b.Cover(None, FACTS))
    assert all(page_of(pages, f"Label {n} ") == page_of(pages, f"value {n} ") for n in range(20))


@pytest.mark.parametrize("lines", FILLERS)
def test_facts_that_are_read_down_two_columns_stand_on_one_page(lines):
    pages = below(lines, b.FactList(FACTS))
    assert len({page_of(pages, f"Label {n} ") for n in range(20)}) == 1


@pytest.mark.parametrize("lines", FILLERS)
def test_a_figure_stands_on_the_page_of_the_words_that_say_what_it_is_worth(lines):
    pages = below(lines, b.FactList(FACTS[:1], leads=True), b.Prose("It proves nothing by itself."))
    assert page_of(pages, "value 0 ") == page_of(pages, "It proves nothing")


@pytest.mark.parametrize("lines", FILLERS)
def test_the_room_beneath_the_last_words_asks_for_no_page_of_its_own(lines):
    last = b.FigureTable(COLUMNS, (("rim", "0.71"),), note="last words")
    for more in range(3):
        found = below(lines, *[b.Heading("Smaller", 2)] * more, last)
        assert page_of(found, "last words") == len(found) - 1
