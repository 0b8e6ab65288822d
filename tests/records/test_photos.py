"""Photographs: several at once, refused by name, served only to those who are signed in."""

import hashlib
from io import BytesIO
from pathlib import Path

import pytest
from django.conf import settings
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from PIL import Image

from records.models import Item, Photo
from tests.factories import make_item, make_report, make_user
from tests.records.pictures.samples import COINS

pytestmark = pytest.mark.django_db(transaction=True)
ADD = "/things/R.1/photographs/new/"
DATE_TIME_ORIGINAL = 0x9003  # Exif 2.32, table 8


@pytest.fixture
def technician(client: Client) -> Client:
    client.force_login(make_user("technician"))
    make_item("R.1")
    return client


def picture(taken: str = "") -> bytes:
    exif = Image.Exif()
    if taken:
        exif.get_ifd(0x8769)[DATE_TIME_ORIGINAL] = taken
    buffer = BytesIO()
    Image.new("RGB", (640, 480), (140, 90, 50)).save(buffer, "JPEG", exif=exif)
    return buffer.getvalue()


def upload(name: str, content: bytes) -> SimpleUploadedFile:
    return SimpleUploadedFile(name, content, content_type="image/jpeg")


def files_kept() -> list[Path]:
    return [path for path in Path(settings.MEDIA_ROOT).rglob("*") if path.is_file()]


def test_original_is_kept_byte_for_byte_with_the_camera_s_time(technician):
    content = picture("2026:02:03 10:15:00")

    answer = technician.post(ADD, {"files": [upload("obverse.jpg", content)], "view": "obverse", "caption": "Obverse"})

    photo = Photo.objects.get()
    assert answer.url == "/things/R.1/#photographs"
    assert photo.sha256 == hashlib.sha256(content).hexdigest()
    assert (Path(settings.MEDIA_ROOT) / photo.path).read_bytes() == content
    assert photo.taken_at.isoformat() == "2026-02-03T09:15:00+00:00"  # 10:15 by the museum's clock


def test_several_files_are_taken_each_by_its_own_merits_and_the_refused_leave_nothing(technician):
    sent = [upload("good.jpg", picture()), upload("paper.jpg", b"%PDF-1.7 nothing"), upload("cut.jpg", picture()[:900])]

    answer = technician.post(ADD, {"files": sent, "view": "reverse", "caption": "kept words"})

    page = answer.content.decode()
    assert answer.status_code == 422
    assert [photo.original_name for photo in Photo.objects.all()] == ["good.jpg"]
    assert "“paper.jpg” is a PDF, whatever its name says" in page
    assert "“cut.jpg” is damaged" in page
    assert 'value="kept words"' in page
    assert len(files_kept()) == 4  # the original and its three small copies


def test_picture_of_too_many_pixels_is_refused(technician):
    buffer = BytesIO()
    Image.new("1", (20000, 10000)).save(buffer, "PNG")

    answer = technician.post(ADD, {"files": [upload("huge.png", buffer.getvalue())], "view": "overall"})

    assert "too many to open safely" in answer.content.decode()
    assert files_kept() == []


@pytest.mark.parametrize("sent", [{}, {"files": []}])
def test_nothing_chosen_is_said(technician, sent):
    answer = technician.post(ADD, {"view": "overall", **sent})

    assert answer.status_code == 422
    assert "Choose at least one photograph" in answer.content.decode()


def test_empty_file_is_refused(technician):
    assert technician.post(ADD, {"files": [upload("none.jpg", b"")], "view": "overall"}).status_code == 422


def kept(client: Client, taken: str = "") -> Photo:
    client.post(ADD, {"files": [upload("obverse.jpg", picture(taken))], "view": "obverse"})
    return Photo.objects.get()


def test_files_are_served_with_their_type_and_may_be_kept_by_the_browser(technician):
    photo = kept(technician)

    small = technician.get(f"/photographs/{photo.pk}/thumbnail/")
    original = technician.get(f"/photographs/{photo.pk}/original/")
    again = technician.get(f"/photographs/{photo.pk}/thumbnail/", headers={"if-none-match": small["ETag"]})

    assert small["Content-Type"] == "image/jpeg" and small["X-Content-Type-Options"] == "nosniff"
    assert "private" in small["Cache-Control"]
    assert original["Content-Disposition"] == 'attachment; filename="obverse.jpg"'
    assert hashlib.sha256(b"".join(original.streaming_content)).hexdigest() == photo.sha256
    assert again.status_code == 304


@pytest.mark.parametrize("rider", [b"<script>alert(1)</script>", b"%PDF-1.7 ", b"PK\x03\x04"])
def test_what_rides_behind_a_picture_is_never_served_as_a_page(technician, rider):
    technician.post(ADD, {"files": upload("a.jpg", picture() + rider), "view": "obverse"})
    photo = Photo.objects.get()

    original = technician.get(f"/photographs/{photo.pk}/original/")

    assert original["Content-Type"] == "image/jpeg" and original["X-Content-Type-Options"] == "nosniff"
    assert original["Content-Disposition"].startswith("attachment")
    assert rider not in b"".join(technician.get(f"/photographs/{photo.pk}/screen/").streaming_content)


@pytest.mark.parametrize("name", ["../../evil.jpg", "..\\evil.jpg", "/etc/passwd.jpg", "a\0.jpg", "a.php.jpg"])
def test_a_name_never_leads_out_of_the_folder_of_photographs(technician, name):
    technician.post(ADD, {"files": upload(name, picture()), "view": "obverse"})

    for photo in Photo.objects.all():
        assert ".." not in photo.path and not photo.path.startswith("/")
        assert (Path(settings.MEDIA_ROOT) / photo.path).resolve().is_relative_to(Path(settings.MEDIA_ROOT).resolve())


def test_small_copy_that_was_lost_is_made_again(technician):
    photo = kept(technician)
    for path in files_kept():
        if "derivatives" in path.parts:
            path.unlink()

    assert technician.get(f"/photographs/{photo.pk}/screen/").status_code == 200


@pytest.mark.parametrize("size", ["huge", "..", "original.jpg"])
def test_other_sizes_are_not_there(technician, size):
    assert technician.get(f"/photographs/{kept(technician).pk}/{size}/").status_code == 404


def test_stranger_is_sent_to_the_door(technician):
    photo = kept(technician)
    technician.logout()

    assert technician.get(f"/photographs/{photo.pk}/original/").url.startswith("/sign-in/")


def test_undated_photograph_is_flagged_until_a_person_dates_it(technician):
    photo = kept(technician)
    assert "undated" in technician.get("/things/R.1/").content.decode()

    technician.post(
        f"/photographs/{photo.pk}/edit/", {"view": "obverse", "taken_at": "2026-02-03T10:15", "version": "0"}
    )

    assert "undated" not in technician.get("/things/R.1/").content.decode()


def test_time_of_the_camera_is_corrected_only_with_a_reason_that_the_history_keeps(technician):
    photo = kept(technician, "2026:02:03 10:15:00")
    changed = {"view": "obverse", "taken_at": "2026-02-03T11:15", "version": "0"}

    refused = technician.post(f"/photographs/{photo.pk}/edit/", changed)
    technician.post(f"/photographs/{photo.pk}/edit/", changed | {"taken_reason": "The clock stood an hour behind."})

    photo.refresh_from_db()
    assert refused.status_code == 422
    assert photo.taken_at.hour == 10
    assert "The clock stood an hour behind." in technician.get("/things/R.1/history/").content.decode()


def test_reader_may_not_send_photographs(client):
    make_item("R.1")
    client.force_login(make_user("reader"))

    assert client.post(ADD, {"files": [upload("good.jpg", picture())], "view": "overall"}).status_code == 403
    assert not Photo.objects.exists()


def test_the_same_file_is_kept_once_and_the_kept_one_is_offered(technician):
    content = picture()
    technician.post(ADD, {"files": upload("obverse.jpg", content), "view": "obverse", "caption": "Obverse"})
    before = files_kept()
    make_item("R.2")

    page = technician.post("/things/R.2/photographs/new/", {"files": upload("again.jpg", content), "view": "overall"})

    assert page.status_code == 422
    assert "“again.jpg” is kept already, as “Obverse” of R.1; it is not kept twice." in page.content.decode()
    assert f'href="{Photo.objects.get().get_absolute_url()}"' in page.content.decode()
    assert files_kept() == before


def test_a_script_sends_file_by_file_and_gets_one_line_for_each(technician):
    by_piece = {"headers": {"register-piece": "1"}}
    good = technician.post(ADD, {"files": upload("good.jpg", picture()), "view": "reverse"}, **by_piece)
    bad = technician.post(ADD, {"files": upload("bad.jpg", b"no picture"), "view": "reverse"}, **by_piece)
    unread = technician.post(ADD, {"files": upload("c.jpg", picture()), "view": "nothing such"}, **by_piece)

    assert [answer.status_code for answer in (good, bad, unread)] == [200] * 3
    assert good.content.decode().strip().startswith('<li class="sent" data-state="look">')  # kept, but undated
    assert "“bad.jpg” is not a picture" in bad.content.decode() and "refused" in bad.content.decode()
    assert "What they show" in unread.content.decode() and Photo.objects.count() == 1


def test_photographs_sent_for_an_examination_belong_to_it_even_if_they_were_kept_before(technician):
    report = make_report(Item.objects.get(number="R.1"), signed=False)
    content = picture()
    technician.post(ADD, {"files": upload("obverse.jpg", content), "view": "obverse"})

    technician.post(f"{ADD}?report={report.number}", {"files": upload("obverse.jpg", content), "view": "obverse"})

    assert report.photos.get() == Photo.objects.get()


def test_every_format_of_a_telephone_or_a_camera_is_taken_at_once(technician):
    sent = [SimpleUploadedFile(name, make()) for name, make in COINS.items()]

    answer = technician.post(ADD, {"files": sent, "view": "overall"})

    assert answer.status_code == 302
    assert {photo.original_name for photo in Photo.objects.all()} == set(COINS)
    for photo in Photo.objects.all():
        served = technician.get(f"/photographs/{photo.pk}/original/")
        assert served["Content-Type"] == photo.media_type
        assert b"".join(served.streaming_content) == COINS[photo.original_name]()


def test_the_place_of_an_edge_is_said_with_its_angle(technician):
    sent = {"files": upload("edge.jpg", picture()), "view": "edge", "angle_deg": "90", "angle_deg_unit": "°"}

    technician.post(ADD, sent)
    refused = technician.post(
        ADD, sent | {"files": upload("b.jpg", picture("2026:02:03 10:15:00")), "angle_deg": "361"}
    )

    assert Photo.objects.get().view_words == "edge at 90°"
    assert "From 0 to 360" in refused.content.decode()
