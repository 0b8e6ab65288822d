"""The condition sheet: known findings to be ticked, empty lines for a hand, pictures to draw on, the code back."""

import subprocess

import pytest
import zxingcpp
from django.conf import settings
from django.core.files.base import ContentFile
from django.urls import reverse
from PIL import Image
from reportlab.lib.units import mm

from records.extensions import PaperContext, paper_kinds
from records.models import Document, Finding
from records.pdf.bench import ROW, BoxTable
from records.pdf.flow import Room, paragraph
from records.pdf.handwriting import LINE
from records.reports import condition_sheet
from records.services.condition import carry_over
from records.services.photographs import keep_photo
from tests.factories import NINE, make_item, make_report, make_term, make_user
from tests.pdf.pictures import medal
from tests.pdf.reading import pages, text

pytestmark = pytest.mark.django_db

# 9 mm: the line of forms filled in by hand, common practice (school ruling is 8 mm to 9 mm), no published source.
LEAST = 9 / 25.4 * 72


def printed(report, page_size="A4") -> bytes:
    return paper_kinds["condition-sheet"].build(report, PaperContext(1, NINE, "Pell", "technician", page_size))[0]


def compared(words="edge knock", **fields):
    """A new report after one that found something."""
    item = make_item("OVM.1931.0044", materials="bronze")
    before = make_report(item, mass_g=71.36)
    term = make_term("finding", words, group="any object", definition="Inward dent of the edge.")
    Finding.objects.create(report=before, position_count=1, term=term, **{"location": "edge, 4 h"} | fields)
    return carry_over(make_report(item, "after", signed=False, previous=before))


def test_lines_and_boxes_are_wide_enough_for_a_hand():
    assert LINE >= LEAST and condition_sheet.ROW >= LEAST


@pytest.mark.parametrize("page_size", ["A4", "Letter"])
def test_known_findings_are_ticked_and_new_ones_numbered_on(page_size):
    said = text(printed(compared(severity=2, extent="1.5 mm"), page_size))

    assert "1 · edge knock, edge, 4 h" in said and "1.5 mm, 2 moderate, not assessed" in said
    assert "Same Worse Better Treated" in said and "never counts as “same”" in said
    assert "last time: raking, left" in said and "last time: 71.36 g" in said
    assert "New findings" in said and "edge knock, inward dent" in said


def test_the_first_report_has_empty_lines_alone():
    said = text(printed(make_report(make_item(), signed=False)))

    assert "Known findings" not in said and "no earlier report" in said and "front, to be sketched" in said


def test_long_words_make_their_line_higher_and_run_into_nothing():
    room = Room(170 * mm, 240 * mm)
    long = f"1 · dent, {'obverse, on the rim from the upper left to the lower right, ' * 4}"

    def height(words):
        table = BoxTable((("Known findings", "", 55.0),), (("Seen now", "", 115.0),), ((words,),)).flow(room)[0]
        return table.wrap(room.width, room.height)[1]

    alone = paragraph(long, "cell").wrap(55 / 170 * room.width - 6, room.height)[1]

    assert alone > ROW and height(long) - height("1 · dent") >= alone - ROW


def test_its_code_leads_to_the_report(tmp_path):
    """Read back by zxing-cpp from the page as poppler draws it."""
    report = make_report(make_item(), signed=False)
    (tmp_path / "sheet.pdf").write_bytes(printed(report))
    asked = ["pdftoppm", "-r", "150", "-l", "1", "-png", "-singlefile", tmp_path / "sheet.pdf", tmp_path / "page"]
    subprocess.run(asked, check=True)

    (code,) = zxingcpp.read_barcodes(Image.open(tmp_path / "page.png"))

    assert code.text == f"{settings.BASE_URL}{reverse('condition', args=[report.number])}"


def test_pictures_are_pale_so_that_a_pencil_stands_out(django_capture_on_commit_callbacks):
    report = make_report(make_item(), signed=False)
    with django_capture_on_commit_callbacks(execute=True):
        face = keep_photo(file=ContentFile(medal()), name="face.jpg", item=report.item, view="obverse")
    report.photos.add(face)

    said = pages(printed(report))

    assert any("Where it lies" in page for page in said) and not any("to be sketched" in page for page in said)


def test_a_technician_prints_it_from_the_page_of_the_report(client):
    report = make_report(make_item(), signed=False)
    client.force_login(make_user("technician"))
    issue = reverse("paper_issue", args=["condition-sheet", report.number])
    assert issue in client.get(report.get_absolute_url()).content.decode()

    assert client.post(issue).status_code == 302

    paper = Document.objects.get(kind="condition-sheet", number=report.number)
    assert client.get(reverse("document", args=[paper.pk])).content.startswith(b"%PDF")


def test_a_signed_report_offers_none_and_says_what_to_do(client):
    report = make_report(make_item())
    client.force_login(make_user("technician"))
    issue = reverse("paper_issue", args=["condition-sheet", report.number])
    assert issue not in client.get(report.get_absolute_url()).content.decode()

    assert "begin the next examination" in client.post(issue, follow=True).content.decode()
    assert not Document.objects.exists()
