"""Sheets of labels: measured on the rendered page, tried before labels are spent, whole at a thousand."""

import shutil
import subprocess
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
import zxingcpp
from PIL import Image
from reportlab.lib.units import mm

from records.pdf import fonts
from records.pdf.label_sheets import build_sheet, build_trial
from records.pdf.labels import build_label
from records.pdf.page_sizes import PAGE_SIZES
from records.pdf.sheets import SHEETS
from records.pdf.tags import SaleTicket, ShelfTag
from records.wording.reading import X_HEIGHT_EM
from tests.pdf import reading
from tests.pdf.specimens import ISSUED, LABEL, TAG

DPI = 300
PX_MM = 25.4 / DPI
SMALL, LARGE = "A4, 65 of 38.1 × 21.2 mm", "A4, 8 of 99.1 × 67.7 mm"
# Common grids of label sheets: width, height, columns, rows, left, top, gap between columns; in mm (inches × 25.4).
GRIDS = [
    (70, 37, 3, 8, 0, 0.5, 0), (38.1, 21.2, 5, 13, 4.75, 10.7, 2.5), (63.5, 33.9, 3, 8, 7.25, 12.9, 2.5),
    (63.5, 38.1, 3, 7, 7.2, 15.15, 2.5), (52.5, 29.7, 4, 10, 0, 0, 0), (99.1, 38.1, 2, 7, 4.65, 15.15, 2.5),
    (99.1, 67.7, 2, 4, 4.65, 13.1, 2.5), (66.675, 25.4, 3, 10, 4.7625, 12.7, 3.175),
    (44.45, 12.7, 4, 20, 7.62, 12.7, 7.62), (101.6, 25.4, 2, 10, 3.9624, 12.7, 4.7625),
    (101.6, 50.8, 2, 5, 3.9624, 12.7, 4.7625),
]  # fmt: skip


def picture(pdf: bytes, folder: Path) -> np.ndarray:
    pdftoppm = shutil.which("pdftoppm")
    assert pdftoppm, "pdftoppm of poppler-utils measures the rendered page"
    (folder / "page.pdf").write_bytes(pdf)
    subprocess.run([pdftoppm, "-r", str(DPI), "-png", "-singlefile", folder / "page.pdf", folder / "page"], check=True)
    with Image.open(folder / "page.png") as page:
        return np.array(page.convert("L"))


def lines_mm(dark: np.ndarray) -> list[float]:
    """Middles of the dark stretches along a row or column of pixels, in mm."""
    places = np.flatnonzero(dark)
    stretches = np.split(places, np.flatnonzero(np.diff(places) > 1) + 1) if len(places) else []
    return [float((stretch[0] + stretch[-1] + 1) / 2 * PX_MM) for stretch in stretches]


def test_all_the_grids_are_there():
    lengths = [(s.width, s.height, s.left, s.top, s.gap_x) for s in SHEETS.values()]
    counts = [(s.columns, s.rows) for s in SHEETS.values()]
    assert sorted(counts) == sorted((grid[2], grid[3]) for grid in GRIDS)
    for grid in GRIDS:
        asked = [grid[0], grid[1], *grid[4:]]
        assert any(pytest.approx(asked, abs=0.01) == [each / mm for each in have] for have in lengths), grid
    for sheet in SHEETS.values():
        width, height = PAGE_SIZES[sheet.page]
        assert sheet.left + sheet.columns * sheet.width + (sheet.columns - 1) * sheet.gap_x <= width + 0.01
        assert sheet.top + sheet.rows * (sheet.height + sheet.gap_y) <= height + 0.01


@pytest.mark.parametrize("name", list(SHEETS))
@pytest.mark.parametrize("shift", [(0.0, 0.0), (5.0, -5.0)])
def test_the_outlines_lie_where_the_sheet_has_them_within_three_tenths(name, shift, tmp_path):
    sheet = SHEETS[name]
    page = picture(build_trial(sheet, ISSUED, nudge=(shift[0] * mm, shift[1] * mm)), tmp_path) < 140
    left, top = sheet.left / mm + shift[0], sheet.top / mm - shift[1]
    width, height, page_mm = sheet.width / mm, sheet.height / mm, PAGE_SIZES[sheet.page][0] / mm

    across = lines_mm(page[round((top + height * 0.2) / PX_MM)])
    down = lines_mm(page[:, round((left + width * 0.8) / PX_MM)])

    steps = [left + column * (width + sheet.gap_x / mm) for column in range(sheet.columns)]
    expected = sorted(edge for step in steps for edge in (step, step + width) if 0.3 < edge < page_mm - 0.3)
    for edge in expected:
        assert min(abs(edge - line) for line in across) <= 0.3, f"{edge:.2f} mm across"
    rows = [top + row * height for row in range(sheet.rows + 1)]
    for edge in (edge for edge in rows if 0.3 < edge < page.shape[0] * PX_MM - 0.3):
        assert min(abs(edge - line) for line in down) <= 0.3, f"{edge:.2f} mm down"


def test_a_test_page_numbers_the_labels_and_says_its_shift():
    text = reading.text(build_trial(SHEETS[LARGE], ISSUED, nudge=(1 * mm, -2 * mm)))
    assert "+1.0 mm to the right, -2.0 mm upwards" in text and all(str(n) in text for n in range(1, 9))


def test_cut_marks_stand_in_the_corners_of_each_label(tmp_path):
    sheet = SHEETS[LARGE]
    page = picture(build_sheet([TAG], sheet, ISSUED, marks=True), tmp_path) < 140
    plain = picture(build_sheet([TAG], sheet, ISSUED), tmp_path) < 140
    row, column = round((sheet.top / mm) / PX_MM), round((sheet.left / mm + 1.2) / PX_MM)
    assert page[row - 3 : row + 4, column].any() and not plain[row - 3 : row + 4, column].any()


@pytest.mark.parametrize("kind", ["object", "shelf", "sale"])
@pytest.mark.parametrize("name", list(SHEETS))
def test_each_tag_of_a_sheet_says_its_kind_and_number_and_its_code_reads_back(name, kind, tmp_path):
    def tag(number):
        code = f"https://register.example/c/{number}/"
        if kind == "shelf":
            return ShelfTag(number, TAG.kind, TAG.title, code, "Gallery, case 4")
        if kind == "sale":
            return SaleTicket(number, "Museum copy 2026", "Electrotype copy, 2026; marked COPY.", TAG.title, code)
        return replace(TAG, number=number, code=code)

    tags = [tag(f"R.2026.{n}") for n in (1, 2, 3)]
    pdf = build_sheet(tags, SHEETS[name], ISSUED)

    text, picture_of = reading.text(pdf), picture(pdf, tmp_path)
    assert sorted(code.text for code in zxingcpp.read_barcodes(picture_of)) == [each.code for each in tags]
    for each in tags:
        assert each.number in text and each.kind in text
    assert text.index(tags[0].kind) < text.index(tags[0].number)


def test_limits_of_use_are_never_left_out_of_a_small_label():
    from records.pdf.label_text import LabelTooFull

    limited = replace(TAG, title="Display only, no handling, no further heat; survey at six months.", limits=True)
    with pytest.raises(LabelTooFull):
        build_sheet([limited], SHEETS["Letter, 80 of 1¾ × ½ in"], ISSUED)
    assert "no handling" in reading.text(build_sheet([limited], SHEETS[LARGE], ISSUED))


def test_a_thousand_tags_are_made_in_one_go_and_each_is_told():
    told: list[int] = []
    tags = [replace(TAG, number=f"R.2026.{n}", code=f"https://register.example/c/R.2026.{n}/") for n in range(1, 1001)]
    pdf = build_sheet(tags, SHEETS[SMALL], ISSUED, tell=told.append)
    pages = reading.pages(pdf)
    assert told == list(range(1, 1001)) and len(pages) == 16
    assert sum(page.count("Electrotype copy, 2026") for page in pages) == 1000


def test_the_x_height_is_that_of_the_face_itself():
    """OS/2 table of the font file: sxHeight over unitsPerEm."""
    from reportlab.pdfbase.ttfonts import TTFontFile

    face = TTFontFile(str(fonts.FILES[fonts.SANS]))
    face.seek_table("head")
    face.skip(18)
    units = face.read_ushort()
    face.seek_table("OS/2")
    face.skip(86)
    assert face.read_short() / units == pytest.approx(X_HEIGHT_EM, abs=0.001)


@pytest.mark.parametrize(("size", "width_mm"), [("small", 105), ("medium", 148), ("large", 170)])
def test_gallery_labels_come_in_three_sizes_between_their_cut_marks(size, width_mm, tmp_path):
    page = picture(build_label(LABEL, ISSUED, size=size, distance_m=0.45), tmp_path) < 140
    top = round((20 - 4) / PX_MM)  # 4 mm above the label: the cut marks alone cross this line
    left, right = lines_mm(page[top])
    assert right - left == pytest.approx(width_mm, abs=0.3)
