"""The condition report as a paper: drawn findings with numbers and legend, details, comparison, pairs, incident."""

import json
from io import BytesIO

import numpy as np
import pytest
from django.core.files.base import ContentFile
from PIL import Image
from pypdf import PdfReader

from records.models import Finding, Incident, PhotoPair
from records.pdf import archive
from records.pdf.photo_map.frame import MappedFrame
from records.reports import condition as paper
from records.reports import finding_pictures
from records.services.condition import carry_over
from records.services.mapping import draw
from records.services.photographs import keep_photo
from tests.factories import NINE, make_item, make_report, make_term
from tests.pdf.pictures import medal
from tests.pdf.reading import pages, text
from tests.records.test_papers import issue, pdf_of

pytestmark = pytest.mark.django_db
LONG = "A sentence about the surface that goes on for quite a while, with Ω, Ελληνικά and “quotes”. " * 12


@pytest.fixture
def keep(django_capture_on_commit_callbacks):
    def kept(item, pixels=700, content=b"", **about):
        with django_capture_on_commit_callbacks(execute=True):
            file = ContentFile(content or medal(pixels))
            return keep_photo(file=file, name=f"{pixels}.jpg", item=item, **about)

    return kept


def finding(report, number=1, word="knock", **fields):
    term = make_term("finding", word, definition="A dent from a blow.", pattern="loss")
    return Finding.objects.create(report=report, position_count=number, term=term, **{"location": "edge, 4 h"} | fields)


@pytest.fixture
def mapped(keep):
    """A report with two findings: one drawn twice on its front, one not drawn."""
    report = make_report(make_item("OVM.1931.0044"), signed=False)
    report.photos.add(front := keep(report.item, view="obverse"))
    knock = finding(report)
    draw(finding=knock, photo=front, shape="rectangle", points=[[300, 300], [360, 360]])
    draw(finding=knock, photo=front, shape="point", points=[[420, 300]])
    finding(report, 2, "abrasion", location="reverse")
    return report


def jpeg(picture: Image.Image) -> bytes:
    out = BytesIO()
    picture.save(out, "JPEG", quality=95)
    return out.getvalue()


def test_the_summary_shows_the_photograph_with_its_numbers_and_legend_on_one_page(mapped):
    first, *_ = pages(pdf_of(issue("condition-report", mapped)))

    assert "loss: crossed lines" in first and "State" in first
    cover = paper.cover(paper.gather(mapped))
    assert [shape.number for shape in cover.photo.shapes] == ["1", "1"]
    assert isinstance(cover.photo.frame(200, 200), MappedFrame)


def test_the_detail_of_a_finding_is_one_picture_around_all_that_is_drawn_of_it(mapped):
    g = paper.gather(mapped)
    (one,) = finding_pictures.details(g.findings, g.maps, mapped.item)

    left, top, right, bottom = one.window
    assert left < 300 and top < 300 and right > 420 and bottom > 360
    assert Image.open(BytesIO(one.source)).size == (right - left, bottom - top)
    assert one.caption.startswith("Finding 1, knock, edge, 4 h.")


def test_a_photograph_that_is_a_detail_itself_is_not_cut_again(keep):
    report = make_report(make_item(), signed=False)
    report.photos.add(keep(report.item, 500, view="obverse"))
    near = keep(report.item, view="detail")
    draw(finding=finding(report), photo=near, shape="point", points=[[300, 300]])
    g = paper.gather(report)

    assert g.main_map is None and finding_pictures.details(g.findings, g.maps, report.item) == []
    assert "Where the findings lie" in text(pdf_of(issue("condition-report", report)))


def test_findings_stand_beside_those_of_the_last_report():
    item = make_item()
    before = make_report(item)
    finding(before, extent="1.5 mm", severity=1)
    finding(before, 2, "wear")
    after = carry_over(make_report(item, "after", previous=before, change="changed", change_words="The knock grew."))
    grown = after.findings.get(position_count=1)
    grown.extent, grown.comparison = "2.5 mm", "worse"
    grown.save()

    said = text(pdf_of(issue("condition-report", after)))

    assert "Finding by finding" in said and "1.5 mm, 1 minor, not assessed 2.5 mm, 1 minor" in said
    # What nobody looked at says nothing of now.
    assert "not looked at not re-examined" in said


def test_an_incident_says_whether_the_owner_was_told():
    report = make_report(make_item(), "after", change="changed", change_words="A flake is lost.")
    incident = Incident.objects.create(number="I-2026-07", report=report, treatment="Edge consolidated")
    assert "Edge consolidated. The owner was not told yet." in text(pdf_of(issue("condition-report", report)))

    incident.owner_told_on, incident.owner_told_words = NINE.date(), "by telephone"
    incident.save()

    assert "Owner told on 16 February 2026: by telephone." in text(pdf_of(issue("condition-report", report)))


def test_the_earlier_photograph_is_laid_on_the_later_by_its_points(keep):
    """Shifted by (60, 40): the same place of both pictures then shows the same (Pillow's own crop beside it)."""
    item = make_item()
    whole = Image.open(BytesIO(medal(700))).convert("RGB")
    shown = [whole.crop((60, 40, 660, 640)), whole.crop((0, 0, 600, 600))]
    report = make_report(item)
    photos = [keep(item, at + 1, content=jpeg(picture), view="obverse", taken_at=NINE.replace(day=at + 2))
              for at, picture in enumerate(shown)]  # fmt: skip
    both = PhotoPair.objects.create(
        report=report, before=photos[0], after=photos[1], before_points=[[100, 100], [400, 300]],
        after_points=[[160, 140], [460, 340]],
    )  # fmt: skip

    earlier, _ = finding_pictures.pair(both, item)

    laid = np.asarray(Image.open(BytesIO(earlier.source)).convert("L")).astype(float)
    later = np.asarray(shown[1].convert("L")).astype(float)
    assert abs(laid - later)[100:560, 100:560].mean() < 3
    assert "Laid on the later by points." in earlier.caption


def test_long_words_and_many_findings_lose_nothing(keep):
    report = make_report(
        make_item(), signed=False, summary=LONG, structure=LONG, not_seen=LONG, restrictions=LONG, tests=LONG,
        recommendation=LONG, change="changed", change_words=LONG,
    )  # fmt: skip
    front = keep(report.item, view="obverse")
    report.photos.add(front)
    for number in range(1, 15):
        one = finding(report, number, location="obverse, on the rim " * 7, extent="3 × 2 mm, " * 11, note=LONG)
        points = [[40 * number, 200], [40 * number + 60, 300]]
        draw(finding=one, photo=front, shape="rectangle", points=points)

    said = text(pdf_of(issue("condition-report", report, page_size="Letter")))

    assert said.count("Ελληνικά") >= 12 * 7 and "Finding 14, knock" in said


def test_with_nothing_entered_it_is_one_page_that_says_what_is_missing():
    (only,) = pages(pdf_of(issue("condition-report", make_report(make_item(), signed=False, light=""))))

    assert "Draft, not signed" in only and "No photograph on file" in only and "No findings" in only


def test_the_record_beside_the_paper_holds_drawings_and_their_photographs(mapped):
    files = PdfReader(BytesIO(pdf_of(issue("condition-report", mapped)))).attachments
    rows = json.loads(files[archive.ATTACHMENT][0])["rows"]

    assert [row["columns"]["points"]["value"] for row in rows["drawings"]] == [[[300, 300], [360, 360]], [[420, 300]]]
    assert len(rows["photographs"]) == 1
