"""The bench sheet: planned readings, boxes that a wet hand can write in, and a code that leads to the run."""

import subprocess
from datetime import UTC, datetime, timedelta
from io import BytesIO

import pytest
import zxingcpp
from django.conf import settings
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse
from PIL import Image
from pypdf import PdfReader

from process.models import RampStep, Run
from process.reports import bench_sheet
from process.summaries.bench import MOST_READINGS, readings_of
from process.summaries.runs import summarise
from records.extensions import PaperContext, paper_kinds
from records.models import Document
from records.pdf.bench import LEAST_ROW, ROW
from records.pdf.document import build, page_count
from records.reports.parts import head
from tests.factories import make_bath, make_cathode, make_item, make_mould, make_run, make_user

pytestmark = pytest.mark.django_db

AT = datetime(2026, 3, 28, 17, 0, tzinfo=UTC)


@pytest.fixture
def mask():
    """D-2026-006 of the scenario, over the clock change."""
    run = make_run(
        planned_current_density_a_dm2=1.2, planned_thickness_mm=0.25, planned_efficiency_pct=99, planned_start_at=AT
    )
    make_cathode(run, label="skin on the core", face_area_dm2=8.6, total_area_dm2=8.6, mould=make_mould())
    for order, (current, hours) in enumerate(((3.0, 1), (6.0, 1), (10.3, None)), start=1):
        RampStep.objects.create(run=run, order_count=order, words="step", current_a=current, time_h=hours)
    return Run.objects.with_sheet().get(pk=run.pk)


def printed(run: Run, page_size: str = "A4") -> PdfReader:
    context = PaperContext(1, AT, "Pell", "technician", page_size)
    pdf, _ = paper_kinds["bench-sheet"].build(run, context)
    return PdfReader(BytesIO(pdf))


def test_readings_are_planned_with_what_should_have_passed(mask):
    planned, interval = readings_of(mask, summarise(mask).plan, AT)

    assert interval == 2
    assert [round(each.hours_h, 2) for each in planned[:4]] == [0, 1, 2, 4]
    assert [round(each.charge_ah, 2) for each in planned[:4]] == [0, 3.0, 9.0, 29.6]
    assert [each.current_a for each in planned[:4]] == [3.0, 6.0, 10.3, 10.3]
    assert planned[-1].charge_ah == pytest.approx(163.406, abs=1e-3)
    assert planned[-1].thickness_mm == pytest.approx(0.25)
    assert planned[-1].at - AT == pytest.approx(timedelta(hours=17), abs=timedelta(minutes=1))


def test_a_run_of_weeks_is_read_less_often_than_fits_no_sheet(mask):
    mask.planned_thickness_mm, mask.reading_interval_h = 9.0, 0.5
    planned, interval = readings_of(mask, summarise(mask).plan, AT)

    assert len(planned) <= MOST_READINGS + 4 and interval > 0.5


@pytest.mark.parametrize("page_size", ["A4", "Letter"])
def test_the_sheet_prints_local_times_with_their_offset(mask, page_size):
    text = " ".join(page.extract_text() for page in printed(mask, page_size).pages)

    assert "28 Mar 18:00 +01:00" in text and "29 Mar 11:59 +02:00" in text
    assert mask.number in text and "Bench sheet" in text
    assert "Acid and copper salts burn" in text


def test_boxes_are_high_enough_for_wet_hands():
    assert ROW >= LEAST_ROW == pytest.approx(9 / 25.4 * 72)


def test_lower_rows_spare_a_page_that_holds_the_closing_line_alone(mask):
    mask.planned_thickness_mm = 0.48
    mask.save()
    summary, paper = summarise(mask), head("Bench sheet", mask.number, "", "", PaperContext(1, AT, "", "", "Letter"))
    high = build(paper, bench_sheet.blocks(summary, ROW), {}, AT)

    last = printed(mask, "Letter").pages[-1].extract_text()

    assert page_count(high) == 3 and len(printed(mask, "Letter").pages) == 2
    assert "At the end" in last and "stop, charge reached" in last


def test_the_code_leads_to_the_run(mask, tmp_path):
    """Read back by zxing-cpp from the page as poppler draws it."""
    context = PaperContext(1, AT, "Pell", "technician", "A4")
    pdf, _ = paper_kinds["bench-sheet"].build(mask, context)
    (tmp_path / "sheet.pdf").write_bytes(pdf)
    drawn = [
        "pdftoppm",
        "-r",
        "150",
        "-f",
        "1",
        "-l",
        "1",
        "-png",
        "-singlefile",
        tmp_path / "sheet.pdf",
        tmp_path / "page",
    ]
    subprocess.run(drawn, check=True)

    (code,) = zxingcpp.read_barcodes(Image.open(tmp_path / "page.png"))

    assert code.text == f"{settings.BASE_URL}{reverse('run', args=[mask.number])}"


def test_the_filled_sheet_is_photographed_into_the_run(client, mask):
    client.force_login(make_user("technician"))
    url = f"{reverse('run_photo_add', args=[mask.number])}?view=sheet"
    assert b'<option value="sheet" selected>' in client.get(url).content

    picture = BytesIO()
    Image.new("RGB", (60, 80), "white").save(picture, "JPEG")
    sent = {"files": SimpleUploadedFile("sheet.jpg", picture.getvalue()), "view": "sheet"}
    assert client.post(url, sent).status_code == 302

    assert [photo.view for photo in mask.photos.all()] == ["sheet"]


def test_a_technician_issues_it_and_it_is_kept(client, mask):
    client.force_login(make_user("technician"))

    answer = client.post(reverse("paper_issue", args=["bench-sheet", mask.number]), {"page_size": "Letter"})

    assert answer.status_code == 302
    paper = Document.objects.get(kind="bench-sheet", number=mask.number)
    assert client.get(reverse("document", args=[paper.pk])).content.startswith(b"%PDF")


def test_a_curator_is_refused(client, mask):
    client.force_login(make_user("curator"))

    assert client.post(reverse("paper_issue", args=["bench-sheet", mask.number])).status_code == 403


def test_without_a_cathode_it_says_what_is_missing(client):
    run = make_run()
    client.force_login(make_user("technician"))

    answer = client.post(reverse("paper_issue", args=["bench-sheet", run.number]), follow=True)

    assert "add a cathode" in answer.content.decode()
    assert not Document.objects.exists()


def test_four_sections_of_one_copy_fit_on_a_sheet():
    """Pieces of several metres are grown in sections and joined (common practice, no published source)."""
    model = make_item(title="Relief of the harbour, four metres")
    run = make_run(bath=make_bath(volume_l=2000), planned_thickness_mm=2.0, planned_start_at=AT, reading_interval_h=6)
    for section in ("first", "second", "third", "fourth"):
        make_cathode(run, label=f"{section} section", mould=make_mould(model), face_area_dm2=95, total_area_dm2=100)

    text = " ".join(page.extract_text() for page in printed(run).pages)

    assert all(f"{section} section" in text for section in ("first", "second", "third", "fourth"))
