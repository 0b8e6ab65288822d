"""Labels and tags: the kind of copy first, the number beside a code that reads back, nothing cut off."""

import subprocess
from dataclasses import replace
from pathlib import Path

import pytest
import zxingcpp
from PIL import Image
from reportlab.lib.units import mm

from records.pdf import label_sheets, labels
from records.pdf.codes import draw_qr, modules
from records.pdf.label_text import LabelTooFull
from records.pdf.page_sizes import PAGE_SIZES
from records.pdf.sheets import SHEETS
from records.wording.reading import reading_size
from tests.pdf import reading
from tests.pdf.specimens import ISSUED, LABEL, TAG, UNMARKED_TAG
from tests.tools import tool


def codes_on(pdf: bytes, folder: Path, dpi: int = 200) -> list[str]:
    """What a scanner reads from the first page, printed at the given resolution."""
    pdftoppm = tool("pdftoppm")
    (folder / "page.pdf").write_bytes(pdf)
    subprocess.run([pdftoppm, "-r", str(dpi), "-png", "-singlefile", folder / "page.pdf", folder / "page"], check=True)
    with Image.open(folder / "page.png") as picture:
        return [code.text for code in zxingcpp.read_barcodes(picture.convert("L"))]


def test_a_label_begins_with_the_kind_of_copy_and_its_date() -> None:
    text = reading.text(labels.build_label(LABEL, ISSUED))
    assert text.strip().startswith("Electrotype copy, 2026 after a cast bronze medal")
    assert "R.2026.1" in text


def test_kind_and_title_have_the_same_size() -> None:
    first, second, *rest = LABEL.words(12.0)
    assert first.size == second.size
    assert all(words.size < first.size for words in rest if words.text)


def test_type_grows_with_the_viewing_distance() -> None:
    """Lower-case height 4 mm per metre in good light, 6 in poor (AS 1319 chart); x-height 0.486 em."""
    assert reading_size(1.0) == pytest.approx(4.0 / 0.486 / 25.4 * 72)
    assert reading_size(2.0, "poor") == pytest.approx(3 * reading_size(1.0))


def test_the_code_on_a_tag_reads_back(tmp_path: Path) -> None:
    pdf = labels.build_tag(TAG, ISSUED)
    assert codes_on(pdf, tmp_path) == ["https://register.example/c/R.2026.1"]
    assert "R.2026.1" in reading.text(pdf)
    assert "COPY" in reading.text(pdf)


@pytest.mark.parametrize("name", list(SHEETS))
def test_the_codes_of_a_whole_sheet_read_back(name: str, tmp_path: Path) -> None:
    tags = [replace(TAG, number=f"R.2026.{n}", code=f"https://register.example/c/R.2026.{n}") for n in range(1, 5)]
    pdf = label_sheets.build_sheet(tags, SHEETS[name], ISSUED, skip=3)
    assert sorted(codes_on(pdf, tmp_path, dpi=300)) == [tag.code for tag in tags]


def test_an_unmarked_copy_gets_only_the_workshop_tag() -> None:
    text = reading.text(labels.build_tag(UNMARKED_TAG, ISSUED))
    assert "UNMARKED COPY, not to leave the workshop" in text
    assert "R.2026.4" in text


def test_an_original_s_tag_has_no_word_copy() -> None:
    tag = replace(TAG, kind="Original, 1624", title="Portrait medal", number="OVM.1931.0044", word="")
    assert "COPY" not in reading.text(labels.build_tag(tag, ISSUED))


def test_a_long_title_is_set_smaller_and_a_hopeless_one_refused() -> None:
    labels.build_tag(replace(TAG, title="after the plaster life mask of Bram Oostervane, composer, about 1868"), ISSUED)
    with pytest.raises(LabelTooFull, match="Shorten the text"):
        labels.build_tag(replace(TAG, title="word " * 1500), ISSUED)
    with pytest.raises(LabelTooFull):
        labels.build_label(replace(LABEL, text="word " * 900), ISSUED)


def test_a_code_too_small_to_scan_is_refused() -> None:
    with pytest.raises(ValueError, match="12 mm"):
        draw_qr(None, "x", 0, 0, 10 * mm)


def test_the_code_is_square_with_finder_patterns() -> None:
    rows = modules("https://register.example/c/R.2026.1")
    assert all(len(row) == len(rows) for row in rows)
    assert all(rows[0][:7]) and all(rows[0][-7:]) and not all(rows[-1][-7:])


@pytest.mark.parametrize("name", list(SHEETS))
def test_every_label_of_a_sheet_lies_on_the_page_and_apart_from_the_others(name: str) -> None:
    sheet = SHEETS[name]
    width, height = PAGE_SIZES[sheet.page]
    places = list(sheet.places(sheet.per_page()))
    assert {page for page, _, _ in places} == {0}
    for _, x, y in places:
        assert x >= -0.01 and x + sheet.width <= width + 0.01
        assert y >= -0.01 and y + sheet.height <= height + 0.01
    boxes = {(round(x), round(y)) for _, x, y in places}
    assert len(boxes) == sheet.per_page()


def test_a_started_sheet_goes_on_and_runs_over_to_the_next() -> None:
    sheet = SHEETS["A4, 24 of 70 × 37 mm"]
    assert [page for page, _, _ in sheet.places(3, skip=23)] == [0, 1, 1]
    assert len(reading.pages(label_sheets.build_sheet([TAG] * 3, sheet, ISSUED, skip=23))) == 2


def test_a_sheet_is_shifted_by_no_more_than_five_millimetres() -> None:
    with pytest.raises(ValueError, match="at most 5 mm"):
        list(SHEETS["A4, 24 of 70 × 37 mm"].places(1, nudge=(6 * mm, 0)))


def test_a_piece_with_many_limits_gets_a_larger_tag_instead_of_smaller_words() -> None:
    limits = "No hot soldering; handling barred unless a bend test of the coupon passes. " * 3
    small, large = (reading.size(labels.build_tag(tag, ISSUED)) for tag in (TAG, replace(TAG, title=limits)))
    assert (round(small[0] / mm), round(small[1] / mm)) == (74, 40)
    assert (round(large[0] / mm), round(large[1] / mm)) == (105, 74)  # ISO 216, A7
