"""The pages of issued papers: the list, the stored file, and who may issue the next version."""

from io import BytesIO

import pytest
from django.conf import settings
from django.urls import reverse
from pypdf import PdfReader

from records.models import Document
from records.services import papers
from tests.factories import NINE, make_item, make_photo, make_report, make_user
from tests.records.test_papers import copy_with_mark, issue, pdf_of

pytestmark = pytest.mark.django_db


def sign_in(client, role="curator"):
    client.force_login(make_user(role))


def post(client, kind, number, **data):
    return client.post(reverse("paper_issue", args=[kind, number]), data, follow=True)


def test_issuing_leads_to_the_list_and_a_second_time_keeps_both(client):
    sign_in(client)
    copy_with_mark()
    post(client, "object-tag", "R.2026.1")
    answer = post(client, "object-tag", "R.2026.1")
    assert "version 2, is issued and kept" in answer.content.decode()
    assert [paper.edition_count for paper in answer.context["page"].rows] == [2]
    everything = client.get(reverse("document_list"), {"show": "all"})
    assert "replaced by a later version" in everything.content.decode()
    assert Document.objects.count() == 2


def test_a_refusal_is_told_on_the_page_of_the_thing(client):
    sign_in(client)
    make_item("R.2026.4", kind="copy")
    answer = post(client, "object-tag", "R.2026.4")
    assert "Until it does, only the tag" in answer.content.decode()
    assert not Document.objects.exists()


@pytest.mark.parametrize(
    ("summary", "told"),
    [("Seen under 鏡.", "No typeface here has “鏡”"), ("Sound.", "restore it from the backup")],
)
def test_what_cannot_be_printed_is_told_and_nothing_is_kept(client, summary, told):
    sign_in(client)
    report = make_report(make_item(), summary=summary)
    if told.startswith("restore"):
        report.photos.add(make_photo(report.item))
    assert told in post(client, "condition-report", report.number).content.decode()
    assert not Document.objects.exists()
    assert not list(settings.DOCUMENTS_DIR.glob("*"))


def test_a_technician_may_not_issue(client):
    sign_in(client, "technician")
    copy_with_mark()
    assert post(client, "object-tag", "R.2026.1").status_code == 403


@pytest.mark.parametrize(
    ("kind", "number"), [("object-tag", "no such"), ("novel", "R.2026.1"), ("condition-report", "R.2026.1")]
)
def test_what_cannot_be_issued_is_not_found(client, kind, number):
    sign_in(client)
    copy_with_mark()
    assert post(client, kind, number).status_code == 404


def test_the_page_size_is_a_choice(client):
    sign_in(client, "conservator")
    report = make_report(make_item())
    post(client, "condition-report", report.number, page_size="Letter")
    page = PdfReader(BytesIO(pdf_of(Document.objects.get()))).pages[0]
    assert tuple(page.mediabox[2:]) == (612, 792)  # 8.5 × 11 in


def test_the_stored_file_is_shown_inline(client):
    sign_in(client, "reader")
    document = issue("object-tag", copy_with_mark())
    answer = client.get(reverse("document", args=[document.pk]))
    assert answer.content == pdf_of(document)
    assert answer["Content-Type"] == "application/pdf" and answer["X-Content-Type-Options"] == "nosniff"
    assert answer["Content-Disposition"].startswith("inline")


def test_a_changed_file_is_refused_with_a_sentence(client):
    sign_in(client)
    document = issue("object-tag", copy_with_mark())
    papers.path_of(document).write_bytes(b"%PDF-1.7 another")
    answer = client.get(reverse("document", args=[document.pk]))
    assert answer.status_code == 409 and "has changed the file" in answer.content.decode()


def test_a_lost_file_is_not_found(client):
    sign_in(client)
    document = issue("object-tag", copy_with_mark())
    papers.path_of(document).unlink()
    assert client.get(reverse("document", args=[document.pk])).status_code == 404


def test_a_stranger_sees_nothing(client):
    document = issue("object-tag", copy_with_mark())
    assert client.get(reverse("document", args=[document.pk])).status_code == 302


def test_the_list_filters_by_kind_and_number_and_exports_the_same(client):
    sign_in(client)
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


def test_fifty_papers_ask_the_database_few_times(client, django_assert_max_num_queries):
    sign_in(client)
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
