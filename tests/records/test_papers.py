"""Papers of the register: what may be issued, what stands on it, and that the stored file is what was issued."""

import json
from io import BytesIO

import pytest
from django.core.exceptions import ValidationError
from django.core.files.base import ContentFile
from django.urls import reverse
from pypdf import PdfReader

from records import extensions
from records.models import Document, Finding, LabelWording, Mark, Measurement
from records.pdf import archive
from records.services import papers
from records.services.photographs import keep_photo
from tests.factories import NINE, make_item, make_party, make_photo, make_report, make_term, make_user
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

        for said in ("2 moderate", "possibly active", "3 within weeks", "71.36 g", "edge, 4 h", "new", "A dent from a blow.",
                     "Do not press it back.", "Signed in the register on 16 February 2026"):  # fmt: skip
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
        assert "Of the findings 1 not re-examined" in words and f"Compared with {before.number}" in words

    def test_thirty_findings_repeat_the_heading_on_every_page_of_the_table(self):
        report = make_report(make_item())
        for number in range(1, 31):
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
        assert archive.digest(files[archive.ATTACHMENT][0]) == document.record_sha256
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


class TestPages:
    def sign_in(self, client, role="curator"):
        client.force_login(make_user(role))

    def post(self, client, kind, number, **data):
        return client.post(reverse("paper_issue", args=[kind, number]), data, follow=True)

    def test_issuing_leads_to_the_list_and_a_second_time_keeps_both(self, client):
        self.sign_in(client)
        copy_with_mark()
        self.post(client, "object-tag", "R.2026.1")
        answer = self.post(client, "object-tag", "R.2026.1")
        assert "version 2, is issued and kept" in answer.content.decode()
        assert [paper.edition_count for paper in answer.context["page"].rows] == [2]
        everything = client.get(reverse("document_list"), {"show": "all"})
        assert "replaced by a later version" in everything.content.decode()
        assert Document.objects.count() == 2

    def test_a_refusal_is_told_on_the_page_of_the_thing(self, client):
        self.sign_in(client)
        make_item("R.2026.4", kind="copy")
        answer = self.post(client, "object-tag", "R.2026.4")
        assert "Until it does, only the tag" in answer.content.decode()
        assert not Document.objects.exists()

    def test_a_technician_may_not_issue(self, client):
        self.sign_in(client, "technician")
        copy_with_mark()
        assert self.post(client, "object-tag", "R.2026.1").status_code == 403

    @pytest.mark.parametrize(
        ("kind", "number"), [("object-tag", "no such"), ("novel", "R.2026.1"), ("condition-report", "R.2026.1")]
    )
    def test_what_cannot_be_issued_is_not_found(self, client, kind, number):
        self.sign_in(client)
        copy_with_mark()
        assert self.post(client, kind, number).status_code == 404

    def test_the_page_size_is_a_choice(self, client):
        self.sign_in(client, "conservator")
        report = make_report(make_item())
        self.post(client, "condition-report", report.number, page_size="Letter")
        page = PdfReader(BytesIO(pdf_of(Document.objects.get()))).pages[0]
        assert tuple(page.mediabox[2:]) == (612, 792)  # 8.5 × 11 in

    def test_the_stored_file_is_shown_inline(self, client):
        self.sign_in(client, "reader")
        document = issue("object-tag", copy_with_mark())
        answer = client.get(reverse("document", args=[document.pk]))
        assert answer.content == pdf_of(document)
        assert answer["Content-Type"] == "application/pdf" and answer["X-Content-Type-Options"] == "nosniff"
        assert answer["Content-Disposition"].startswith("inline")

    def test_a_changed_file_is_refused_with_a_sentence(self, client):
        self.sign_in(client)
        document = issue("object-tag", copy_with_mark())
        papers.path_of(document).write_bytes(b"%PDF-1.7 another")
        answer = client.get(reverse("document", args=[document.pk]))
        assert answer.status_code == 409 and "has changed the file" in answer.content.decode()

    def test_a_lost_file_is_not_found(self, client):
        self.sign_in(client)
        document = issue("object-tag", copy_with_mark())
        papers.path_of(document).unlink()
        assert client.get(reverse("document", args=[document.pk])).status_code == 404

    def test_a_stranger_sees_nothing(self, client):
        document = issue("object-tag", copy_with_mark())
        assert client.get(reverse("document", args=[document.pk])).status_code == 302

    def test_the_list_filters_by_kind_and_number_and_exports_the_same(self, client):
        self.sign_in(client)
        issue("object-tag", copy_with_mark())
        issue("object-tag", make_item("OVM.1931.0044"))
        issue("condition-report", make_report(make_item("OVM.1907.0112")))
        asked = {"kind": "object-tag", "q": "OVM"}
        assert [d.number for d in client.get(reverse("document_list"), asked).context["page"].rows] == ["OVM.1931.0044"]
        lines = (
            b"".join(client.get(reverse("document_list"), asked | {"export": "csv"}).streaming_content)
            .decode()
            .splitlines()
        )
        assert len(lines) == 2 and "OVM.1931.0044" in lines[1]

    def test_fifty_papers_ask_the_database_few_times(self, client, django_assert_max_num_queries):
        self.sign_in(client)
        item = make_item()
        for number in range(51):
            Document.objects.create(
                kind="object-tag", number=f"N-{number}", title="Object tag", item=item, issued_at=NINE,
                path=f"{number}.pdf",
                sha256="0" * 64, size_bytes_count=1, record_sha256="0" * 64,
            )  # fmt: skip
        with django_assert_max_num_queries(15):
            answer = client.get(reverse("document_list"))
        assert len(answer.context["page"].rows) == 50 and answer.context["page"].next_key
