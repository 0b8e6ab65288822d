"""A finished paper read back: texts, page numbers, fonts, attachment, and the same bytes twice."""

import json
import subprocess
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pikepdf
import pytest
from pypdf import PdfReader

from records.pdf import blocks as b
from records.pdf.attachment import digest, record_bytes
from records.pdf.document import build
from records.pdf.photos import PhotoUnreadable
from tests.pdf import reading, specimens
from tests.pdf.specimen_condition import CONDITION
from tests.tools import tool


@pytest.fixture(scope="module")
def process_report() -> bytes:
    return specimens.process_report(specimens.PHOTO)


def small(*blocks: b.Block, **changes: str) -> bytes:
    return build(replace(CONDITION, **changes), list(blocks), specimens.RECORD, specimens.ISSUED)


def test_head_and_foot_stand_on_every_page(process_report: bytes) -> None:
    pages = reading.pages(process_report)
    short = digest(record_bytes(specimens.RECORD))[:12]
    for number, page in enumerate(pages, start=1):
        assert f"page {number} of {len(pages)}" in page
        assert "Ostrel Vale Museum of Art and Trade" in page
        assert "Process report · PR-2026-01 · version 2" in page
        assert f"PR-2026-01 · issued 20 April 2026 · record {short}" in page


def test_every_part_of_the_report_is_in_its_text(process_report: bytes) -> None:
    text = reading.text(process_report)
    for words in (
        "Unmet, recorded afterwards", "64.71 ± 0.02", "calculated", "M-2026-01 (−)", "not documented",
        "OVM 2026 COPY", "Caution", "Tobias Marrowby", "Appendix A", "m = Q · M / (z · F)", "96 485.332",
        "target 0.60 mm",
    ):  # fmt: skip
        assert words in text, words


def test_what_people_type_is_printed_and_not_obeyed() -> None:
    text = reading.text(small(b.Prose("<b>&amp; </para> <font>"), b.Heading("a < b & c"), title="<i>Medal</i> & <br/>"))
    assert "<b>&amp; </para> <font>" in text
    assert "a < b & c" in text
    assert "<i>Medal</i> & <br/>" in text


def test_the_attached_record_comes_back_equal(process_report: bytes) -> None:
    (attached,) = PdfReader(BytesIO(process_report)).attachments["record.json"]
    assert json.loads(attached) == specimens.RECORD


def test_bytes_are_attached_untouched() -> None:
    record = b'{"b": 1,  "a": 2}\n'
    pdf = build(CONDITION, [], record, specimens.ISSUED)
    assert PdfReader(BytesIO(pdf)).attachments["record.json"] == [record]


def test_every_font_is_embedded_and_no_other_is_used(process_report: bytes) -> None:
    embedded = {name for name, is_embedded in reading.fonts(process_report).items() if is_embedded}
    assert len(embedded) >= 4
    assert reading.used_fonts(process_report) <= embedded


def test_the_same_inputs_give_the_same_bytes() -> None:
    assert specimens.process_report(specimens.PHOTO) == specimens.process_report(specimens.PHOTO)


def test_it_says_that_it_is_pdf_a_3b(process_report: bytes) -> None:
    """ISO 19005-3: output intent 6.2.3, metadata 6.6.2, associated files 6.8."""
    with pikepdf.open(BytesIO(process_report)) as pdf:
        assert pdf.open_metadata().pdfa_status == "3B"
        assert pdf.Root.OutputIntents[0].S == "/GTS_PDFA1"
        assert pdf.Root.AF[0].AFRelationship == "/Data"
        assert pdf.Root.AF[0].EF.F.Subtype == "/application/json"
        assert pdf.Root.Lang == "en"
        assert "Electrotype copy R.2026.1" in str(pdf.docinfo.Title)


def test_qpdf_finds_no_fault(process_report: bytes, tmp_path: Path) -> None:
    file = tmp_path / "paper.pdf"
    file.write_bytes(process_report)
    checked = subprocess.run([tool("qpdf"), "--check", file], capture_output=True, text=True, check=False)
    assert checked.returncode == 0, checked.stdout + checked.stderr


def test_letter_paper_is_letter_paper() -> None:
    page = PdfReader(BytesIO(small(page_size="Letter"))).pages[0]
    assert (float(page.mediabox.width), float(page.mediabox.height)) == (612, 792)


def test_a_report_without_photograph_and_facts_still_prints_and_says_so() -> None:
    text = reading.text(small(b.Cover(None, ()), b.FactList(()), b.PhotoGrid(()), b.FigureTable((), ())))
    assert "No photograph on file" in text
    assert "No facts recorded." in text
    assert "No photographs on file." in text
    assert text.count("Nothing recorded.") == 2


def test_an_unreadable_photograph_stops_the_paper(tmp_path: Path) -> None:
    broken = tmp_path / "medal.jpg"
    broken.write_bytes(b"not a picture")
    with pytest.raises(PhotoUnreadable, match=r"medal\.jpg"):
        small(b.Cover(b.Photo(broken), ()))


LONG = "A sentence that goes on and on. " * 260


@pytest.mark.parametrize(
    "block",
    [
        b.FactList((b.Fact("Note", LONG),)), b.Cover(None, (b.Fact("Note", LONG),)), b.Caution(LONG),
        b.Notice("x", LONG),
        b.MarkBlock("COPY", (b.Fact("Note", LONG),)), b.Signatures((b.Signer(LONG, "Witness"),)),
        b.FigureTable((b.Column("No."), b.Column("Note")), (("1", LONG),)), b.Prose("W" * 3000),
    ],
    ids=lambda block: type(block).__name__,
)  # fmt: skip
def test_a_text_longer_than_a_page_runs_on(block: b.Block) -> None:
    assert len(reading.pages(small(block))) >= 2
