"""The page of a photograph and the list of all: what the camera wrote, what was corrected, what is doubtful."""

from datetime import date

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from PIL import Image

from records.models import DescentLink, Photo
from tests.factories import make_item, make_photo, make_user
from tests.records.pictures.samples import coins, encoded

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician"))
    return client


def taken(written: str = "2026:03:30 09:15:00", **more) -> bytes:
    exif = Image.Exif()
    exif[0x0110], exif[0x0112] = "Bench view 24", more.get("orientation", 1)
    details, place = exif.get_ifd(0x8769), exif.get_ifd(0x8825)
    details[0x9003], details[0xA434] = written, "60 mm macro"
    place[1], place[2], place[3], place[4] = "N", (51.0, 30.0, 0.0), "E", (7.0, 15.0, 0.0)
    return encoded(Image.fromarray(coins()), exif=exif)


def kept(client, number: str, content: bytes, **said) -> Photo:
    sent = SimpleUploadedFile("coins.jpg", content)
    client.post(f"/things/{number}/photographs/new/", {"files": sent, "view": "reverse"} | said)
    return Photo.objects.latest("pk")


def page_of(client, photo: Photo) -> str:
    return client.get(photo.get_absolute_url()).content.decode()


def test_what_the_camera_wrote_is_read_and_shown(technician):
    make_item("R.1")

    page = page_of(technician, kept(technician, "R.1", taken(orientation=6)))

    for words in ("Bench view 24", "60 mm macro", "51.50000° N, 7.25000° E; in the original file only", "by 90°"):
        assert words in page
    assert "303 × 384 px" in page


def test_a_corrected_time_stands_beside_the_camera_s_with_its_reason(technician):
    make_item("R.1")
    photo = kept(technician, "R.1", taken())
    changed = {"view": "reverse", "taken_at": "2026-02-03T09:15", "version": "0"}

    refused = technician.post(f"/photographs/{photo.pk}/edit/", changed)
    technician.post(f"/photographs/{photo.pk}/edit/", changed | {"taken_reason": "The clock was never set."})

    page = page_of(technician, photo)
    assert refused.status_code == 422
    assert "30 Mar 2026, 09:15 +02:00, corrected: The clock was never set." in page
    assert "no reason is given" not in page


def test_a_picture_said_to_be_from_before_but_taken_after_the_moulding_is_caught(technician):
    """SCENARIO 12, fault 2: dated 2026-03-30, the moulds were taken on 25 February."""
    coin, mould = make_item("L.2026.003"), make_item("M-2026-03", kind="mould")
    DescentLink.objects.create(source=coin, target=mould, transfer="moulding", happened_on=date(2026, 2, 25))

    late = kept(technician, "L.2026.003", taken(), moment="before")

    assert "taken on 30 March 2026, and the piece was moulded on 25 February 2026" in page_of(technician, late)
    listed = technician.get("/photographs/?state=doubtful")
    assert list(listed.context["page"].rows) == [late]
    late.moment = "after"
    late.save()
    assert "moulded on" not in page_of(technician, late)


def test_a_picture_from_before_that_came_after_the_moulding_is_marked_in_the_list_with_day_and_reason(technician):
    """It may be what it says, but nobody could have looked at it before the mould was taken."""
    coin, mould = make_item("L.2026.003"), make_item("M-2026-03", kind="mould")
    DescentLink.objects.create(source=coin, target=mould, transfer="moulding", happened_on=date(2026, 2, 25))
    late = make_photo(
        coin, moment="before", taken_at="2026-02-20T09:00:00Z", taken_reason="Found on the lender's card."
    )
    in_time = make_photo(coin, moment="before", taken_at="2026-02-20T09:05:00Z")
    Photo.history.filter(id=in_time.pk).update(history_date="2026-02-20T10:00:00Z")
    Photo.history.filter(id=late.pk).update(history_date="2026-03-12T10:00:00Z")

    listed = technician.get("/photographs/?state=doubtful")

    assert list(listed.context["page"].rows) == [late]
    told = "Added on 12 March 2026, after the moulding on 25 February 2026: Found on the lender&#x27;s card"
    assert "added late" in listed.content.decode() and told in listed.content.decode()
    assert told in page_of(technician, late)
    assert "Added on" not in page_of(technician, in_time)


def test_a_picture_without_date_stays_flagged_in_the_list_of_doubtful_ones(technician):
    item = make_item("R.1")
    undated = make_photo(item)
    make_photo(item, taken_at="2026-02-03T09:15:00Z")

    assert list(technician.get("/photographs/?state=doubtful").context["page"].rows) == [undated]


def test_an_original_that_is_gone_is_said_on_its_page(technician):
    assert "is not in the data folder" in page_of(technician, make_photo(make_item("R.1")))


@pytest.mark.parametrize(
    ("kind", "words"),
    [("copy", "Photograph of copy R.1, not of the original."), ("historic_copy", "Photograph of electrotype R.1")],
)
def test_a_caption_of_a_copy_says_wherever_it_stands_that_it_is_one(technician, kind, words):
    photo = make_photo(make_item("R.1", kind=kind), caption="Obverse")

    for address in (photo.get_absolute_url(), "/photographs/", "/things/R.1/"):
        assert words in technician.get(address).content.decode(), address


def test_a_caption_of_an_original_says_nothing_of_copies(technician):
    photo = make_photo(make_item("OVM.1", kind="original"), caption="Obverse")

    assert "Photograph of" not in page_of(technician, photo)


def test_the_list_is_exported_as_it_is_shown(technician):
    make_photo(make_item("R.1"), view="edge", angle_deg=90.0)
    make_photo(make_item("R.2"), view="obverse")

    lines = b"".join(technician.get("/photographs/?view=edge&export=csv").streaming_content).decode().splitlines()

    assert len(lines) == 2 and "R.1" in lines[1] and "edge at 90°" in lines[1]
