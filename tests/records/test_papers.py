"""Papers of the register: what may be issued, what stands on it, and that the stored file is what was issued."""

import json
from io import BytesIO

import pytest
from django.core.exceptions import ValidationError
from django.core.files.base import ContentFile
from pypdf import PdfReader

from records import extensions
from records.models import Document, Finding, LabelWording, Mark, Measurement
from records.pdf import archive
from records.pdf.attachment import digest
from records.services import papers
from records.services.photographs import keep_photo
from tests.factories import NINE, make_item, make_party, make_photo, make_report, make_term
from tests.pdf.pictures import medal
from tests.pdf.reading import pages, text

pytestmark = pytest.mark.django_db


def issue(kind, subject, **more) -> Document:
    return papers.issue(kind=kind, subject=subject, party=make_party(), role="conservator", **more)


def pdf_of(document) -> bytes:
    return papers.path_of(document).read_bytes()


def attached(document) -> dict:
    files = PdfReader(BytesIO(pdf_of(document))).attachments
    return json.loads(files[archive.ATTACHMENT][0])


def refusals(kind, subject) -> str:
    return " ".join(extensions.paper_kinds[kind].refusals(subject))


def copy_with_mark(number="R.2026.1", **fields):
    copy = make_item(number, **{"kind": "copy", "title": "Electrotype copy of a medal", "date_words": "2026"} | fields)
    Mark.objects.create(item=copy, text="COPY", face="reverse", method="punch", photo=make_photo(copy))
    return copy


def label_for(copy, *, approved=True, **fields):
    signature = {"signed_by": make_party(), "signed_role": "curator", "signed_at": NINE} if approved else {}
    words = {
        "kind_of_copy": "Electrotype copy",
        "copy_date": "2026",
        "after": "after a bronze medal, 1624",
        "body": "Copper.",
    }
    return LabelWording.objects.create(item=copy, **words | signature | fields)


def finding(report, number=1, **fields):
    term = make_term("finding", "knock", definition="A dent from a blow.", caution="Do not press it back.")
    return Finding.objects.create(report=report, position_count=number, term=term, location="edge, 4 h", **fields)


class TestConditionReport:
    def test_a_signed_one_states_each_axis_apart_and_no_draft(self):
        report = make_report(make_item("OVM.1931.0044"), stability="possibly_active", mass_g=71.36)
        finding(report, severity=2, urgency=3, extent="1.5 mm", comparison="new")

        words = text(pdf_of(issue("condition-report", report)))

        for said in (
            "2 moderate", "possibly active", "3 within weeks", "71.36 g", "edge, 4 h", "new", "A dent from a blow.",
            "Do not press it back.", "Signed in the register on 16 February 2026",
        ):  # fmt: skip
            assert said in words
        assert "Draft" not in words

    def test_an_unsigned_one_says_so_on_its_first_page(self):
        report = make_report(make_item(), signed=False)
        assert "Draft, not signed" in pages(pdf_of(issue("condition-report", report)))[0]

    def test_nothing_seen_and_nothing_left_unseen_are_both_stated(self):
        report = make_report(make_item(), not_seen="The inside of the rim.")
        words = text(pdf_of(issue("condition-report", report)))
        assert "No findings" in words and "The inside of the rim." in words and "No photograph on file" in words

    def test_findings_not_examined_again_are_counted_and_never_called_unchanged(self):
        item = make_item()
        before = make_report(item)
        report = make_report(item, "after", previous=before, change="no_change")
        finding(report, comparison="not_reexamined")
        words = text(pdf_of(issue("condition-report", report)))
        assert "Findings compared: 1 not re-examined" in words and f"Compared with {before.number}" in words

    def test_sixty_findings_repeat_the_heading_on_every_page_of_the_table(self):
        report = make_report(make_item())
        for number in range(1, 61):
            finding(report, number, note="Old, oxidised inside.")
        found = [
            page
            for page in pages(pdf_of(issue("condition-report", report, page_size="Letter")))
            if "Since the last" in page
        ]
        assert len(found) > 1

    def test_markup_in_a_text_is_printed_as_it_was_typed(self):
        report = make_report(make_item(title="Medal <b>& token"), summary="Seen <script>alert(1)</script>.")
        words = text(pdf_of(issue("condition-report", report)))
        assert "Medal <b>& token" in words and "<script>alert(1)</script>" in words

    def test_a_number_keeps_the_digits_that_were_written(self):
        typed = {"mass_g": {"number": 1940.0, "unit": "g", "text": "1940"}}
        report = make_report(make_item(), mass_g=1940.0, as_typed=typed)
        assert "1940 g" in text(pdf_of(issue("condition-report", report)))

    def test_a_photograph_is_printed_from_its_small_copy(self, django_capture_on_commit_callbacks):
        report = make_report(make_item())
        with django_capture_on_commit_callbacks(execute=True):
            photo = keep_photo(file=ContentFile(medal(700)), name="m.jpg", item=report.item, view="obverse")
        report.photos.add(photo)
        assert "not dated" in text(pdf_of(issue("condition-report", report)))

    def test_a_missing_picture_file_stops_the_paper(self):
        report = make_report(make_item())
        report.photos.add(make_photo(report.item, view="obverse"))
        with pytest.raises(ValueError, match="restore it from the backup"):
            issue("condition-report", report)


class TestAttachedRecord:
    def test_it_names_units_typed_text_and_history(self):
        item = make_item("OVM.1931.0044")
        typed = {"length_mm": {"number": 2.3, "unit": "in", "text": "2.30", "kind": "measured"}}
        Measurement.objects.create(item=item, what="diameter", length_mm=58.42, as_typed=typed)
        report = make_report(item)

        record = attached(issue("condition-report", report))

        size = record["rows"]["sizes of the object"][0]
        assert size["columns"]["length_mm"] == {
            "label": "length",
            "value": 58.42,
            "unit": "mm",
            "as_typed": typed["length_mm"],
        }
        assert size["history"] == item.measurements.get().history.latest().history_id
        assert record["rows"]["report"][0]["columns"]["occasion"]["words"] == "before moulding"
        assert record["paper"]["number"] == report.number

    def test_its_digest_is_kept_and_stands_in_the_foot(self):
        document = issue("condition-report", make_report(make_item()))
        files = PdfReader(BytesIO(pdf_of(document))).attachments
        assert digest(files[archive.ATTACHMENT][0]) == document.record_sha256
        assert document.record_sha256[:12] in text(pdf_of(document))

    @pytest.mark.parametrize("kind", ["gallery-label", "object-tag"])
    def test_a_label_and_a_tag_carry_it_too(self, kind):
        copy = copy_with_mark()
        label_for(copy)
        assert attached(issue(kind, copy))["paper"]["number"] == "R.2026.1"


class TestGalleryLabel:
    def test_it_begins_with_the_kind_of_copy_and_its_date(self):
        copy = copy_with_mark()
        label_for(copy)
        assert text(pdf_of(issue("gallery-label", copy))).startswith(
            "Electrotype copy, 2026 after a bronze medal, 1624"
        )

    def test_unapproved_wording_does_not_print(self):
        copy = copy_with_mark()
        label_for(copy, approved=False)
        with pytest.raises(ValidationError, match="not approved"):
            issue("gallery-label", copy)
        assert not Document.objects.exists()

    def test_wording_that_hides_the_copy_does_not_print(self):
        copy = copy_with_mark()
        label_for(copy, kind_of_copy="Medal of 1624, replica")
        assert "do not say what kind of copy" in refusals("gallery-label", copy)

    def test_an_unmarked_copy_gets_none(self):
        copy = make_item("R.2026.4", kind="copy", date_words="2026")
        label_for(copy)
        assert "carries no permanent, photographed mark" in refusals("gallery-label", copy)

    def test_a_line_that_was_broken_by_hand_is_set_anew(self):
        from records.reports.labels import joined_lines

        assert joined_lines("Copper, tin-alloy filling,\npatinated.\nOriginal in store.") == (
            "Copper, tin-alloy filling, patinated.", "Original in store.",
        )  # fmt: skip


class TestTags:
    def test_number_and_kind_stand_in_clear_beside_the_code(self):
        words = text(pdf_of(issue("object-tag", copy_with_mark())))
        assert "Electrotype copy, 2026" in words and "R.2026.1" in words and "COPY" in words

    def test_of_an_unmarked_copy_only_the_warning_prints(self):
        copy = make_item("R.2026.4", kind="copy")
        assert "UNMARKED COPY" in refusals("object-tag", copy)
        assert "UNMARKED COPY, not to leave the workshop" in text(pdf_of(issue("unmarked-tag", copy)))

    def test_the_warning_is_not_offered_once_the_copy_is_marked(self):
        assert not extensions.paper_kinds["unmarked-tag"].applies_to(copy_with_mark())

    def test_a_historic_copy_is_flagged_as_one(self):
        old = make_item("R.1889.7", kind="historic_copy", date_words="1889")
        assert "HISTORIC COPY" in text(pdf_of(issue("object-tag", old)))

    def test_an_original_is_not_called_a_copy(self):
        assert "COPY" not in text(pdf_of(issue("object-tag", make_item(title="Medal"))))
