"""Tags for many things, and the page that a stranger reads: nothing but that it is a copy, until more is released."""

import uuid
from html import unescape

import pytest
from django.urls import reverse

from records import clock
from records.identity import identity_of
from records.models import Job, LabelWording
from records.reports.tags import sale_ticket_of, shelf_tag_of, tag_of
from records.services import tag_jobs
from tests.factories import make_copy, make_item, make_mark, make_photo, make_user
from tests.pdf import reading

pytestmark = pytest.mark.django_db
SHEET = "A4, 24 of 70 × 37 mm"


@pytest.fixture
def registrar(client):
    client.force_login(make_user("registrar"))
    return client


@pytest.fixture
def labelled():
    copy = make_copy("R.2026.1", about={"title": "Electrotype copy of a medal"})
    make_mark(copy)
    LabelWording.objects.create(
        item=copy, kind_of_copy="Electrotype copy", copy_date="2026", after="after a bronze medal, 1624",
        body="Copper.", signed_at=clock.now(), signed_role="curator",
    )  # fmt: skip
    return copy


def _print(client, **more):
    typed = {
        "kind": "object",
        "group": "",
        "numbers": "R.2026.1",
        "sheet": SHEET,
        "start": "1",
        "right": "0",
        "up": "0",
    }
    return client.post(reverse("label_sheet"), typed | more)


def test_one_wording_feeds_tag_shelf_tag_ticket_caption_and_file_name(labelled):
    tag, shelf, ticket = tag_of(labelled), shelf_tag_of(labelled), sale_ticket_of(labelled)
    named = identity_of(labelled)

    assert tag.kind == shelf.kind == named.heading == "Electrotype copy, 2026"
    assert {tag.title, shelf.title, ticket.after} == {"after a bronze medal, 1624"}
    assert ticket.kind == "Museum copy 2026" and "marked OVM 2026 COPY on the reverse" in ticket.marked
    assert named.caption == "Photograph of electrotype copy R.2026.1, not of the original."
    assert named.file_stem == "electrotype-copy_R.2026.1"
    assert {tag.code, shelf.code, ticket.code} == {named.address} and named.address.endswith("/c/R.2026.1/")


@pytest.mark.parametrize("kind", ["object", "shelf", "sale"])
def test_tags_are_printed_on_a_sheet(registrar, labelled, kind):
    answer = _print(registrar, kind=kind, start="5", marks="on")

    assert answer["Content-Type"] == "application/pdf"
    assert "R.2026.1" in reading.text(answer.content) and "opy" in reading.text(answer.content)


def test_an_unmarked_copy_is_named_and_nothing_is_printed_until_it_is_left_out(registrar, labelled):
    make_copy("R.2026.2")

    refused = _print(registrar, numbers="R.2026.1, R.2026.2")
    others = _print(registrar, numbers="R.2026.1, R.2026.2", leave_out="on")

    assert refused.status_code == 422 and "carries no permanent, photographed mark" in refused.content.decode()
    text = reading.text(others.content)
    assert "R.2026.1" in text and "R.2026.2" not in text


@pytest.mark.parametrize(
    ("field", "typed"),
    [("numbers", {"numbers": "R.1999.9"}), ("numbers", {"numbers": " "}), ("start", {"start": "25"}),
     ("start", {"start": "0"}), ("right", {"right": "5.1"}), ("up", {"up": "-6"}), ("sheet", {"sheet": "A3"})],
)  # fmt: skip
def test_what_cannot_be_printed_is_said_at_its_field_and_kept(registrar, labelled, field, typed):
    answer = _print(registrar, **typed)

    assert answer.status_code == 422 and field in answer.context["form"].errors


def test_a_test_page_needs_no_numbers(registrar):
    answer = _print(registrar, numbers="", trial="1", right="-1.5")

    assert "-1.5 mm to the right" in reading.text(answer.content)


def test_a_group_is_printed_without_typing_numbers(registrar, labelled):
    make_item("M-1", kind="mould", title="Mould")
    make_item("GONE-9", kind="mould", title="Mould", status="destroyed")

    text = reading.text(_print(registrar, group="moulds", numbers="").content)

    assert "M-1" in text and "GONE-9" not in text and "R.2026.1" not in text


def test_many_are_made_by_the_worker_with_progress_and_printed_later(registrar, settings, tmp_path, monkeypatch):
    settings.PRINTING_DIR = tmp_path
    monkeypatch.setattr(tag_jobs, "AT_ONCE", 2)
    for number in range(3):
        make_item(f"OVM.2000.{number}")

    waits = _print(registrar, numbers="OVM.2000.0 OVM.2000.1 OVM.2000.2")
    job, told = Job.objects.get(), []
    address = tag_jobs.work(job, lambda step, share: told.append(share))

    assert waits["Location"] == job.get_absolute_url()
    assert told == sorted(told) and told[-1] == 1.0
    text = reading.text(registrar.get(address).content)
    assert all(f"OVM.2000.{number}" in text for number in range(3))


def test_a_sheet_of_yesterday_is_asked_for_again(registrar, settings, tmp_path):
    settings.PRINTING_DIR = tmp_path

    assert registrar.get(reverse("label_sheet_file", args=[uuid.uuid4()])).status_code == 404


def test_a_stranger_reads_the_approved_wording_and_that_it_is_a_copy(client, labelled):
    page = unescape(client.get(reverse("public_copy", args=["R.2026.1"])).content.decode())

    assert "Electrotype copy, 2026" in page and "after a bronze medal, 1624" in page
    assert "This piece is a copy, not an original work." in page and "/things/" not in page


@pytest.mark.parametrize("how", ["draft", "withheld", "none"])
def test_what_is_not_approved_or_not_released_says_only_that_it_is_a_copy(client, labelled, how):
    label = labelled.label
    if how == "none":
        label.delete()
    else:
        label.is_public, label.signed_at = (False, label.signed_at) if how == "withheld" else (True, None)
        label.save()

    page = unescape(client.get(reverse("public_copy", args=["R.2026.1"])).content.decode())

    assert "This piece is a copy, not an original work." in page and "released nothing more" in page
    assert "bronze" not in page and labelled.title not in page and "Copper" not in page


def test_originals_and_unknown_numbers_have_no_public_page(client):
    original = make_item()

    assert client.get(reverse("public_copy", args=[original.number])).status_code == 404
    assert client.get(reverse("public_copy", args=["R.1999.9"])).status_code == 404


def test_only_the_released_photograph_is_shown_and_only_on_the_public_page(client, labelled):
    make_photo(labelled)

    assert client.get(reverse("public_photo", args=["R.2026.1"])).status_code == 404
    assert "<img" not in client.get(reverse("public_copy", args=["R.2026.1"])).content.decode()


def test_whoever_is_signed_in_goes_on_to_the_record(registrar, labelled):
    assert labelled.get_absolute_url() in registrar.get(reverse("public_copy", args=["R.2026.1"])).content.decode()
