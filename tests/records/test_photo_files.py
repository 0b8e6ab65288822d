"""Serving photographs: in parts (RFC 9110, section 14), kept by digest, as what they are, to nobody outside."""

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile

from records.models import Photo
from tests.factories import make_item, make_user
from tests.records.pictures.samples import COINS

pytestmark = pytest.mark.django_db(transaction=True)
CONTENT = COINS["coins.png"]()
SIZE = len(CONTENT)


@pytest.fixture
def original(client):
    client.force_login(make_user("technician"))
    make_item("R.1")
    sent = SimpleUploadedFile("coins.png", CONTENT)
    client.post("/things/R.1/photographs/new/", {"files": sent, "view": "overall"})
    return f"/photographs/{Photo.objects.get().pk}/original/"


def body(answer) -> bytes:
    return b"".join(answer.streaming_content)


@pytest.mark.parametrize(
    ("asked", "first", "last"),
    [
        ("bytes=0-99", 0, 99),
        ("bytes=100-", 100, SIZE - 1),
        ("bytes=-50", SIZE - 50, SIZE - 1),
        (f"bytes=10-{SIZE * 2}", 10, SIZE - 1),
        (f"bytes=-{SIZE * 2}", 0, SIZE - 1),
        ("bytes=0-0", 0, 0),
    ],
)
def test_a_part_of_the_file_is_given_to_whoever_asks_for_it(client, original, asked, first, last):
    answer = client.get(original, headers={"range": asked})

    assert answer.status_code == 206
    assert answer["Content-Range"] == f"bytes {first}-{last}/{SIZE}"
    assert answer["Content-Length"] == str(last - first + 1)
    assert answer["Content-Type"] == "image/png" and answer["X-Content-Type-Options"] == "nosniff"
    assert body(answer) == CONTENT[first : last + 1]


@pytest.mark.parametrize("asked", [f"bytes={SIZE}-", f"bytes={SIZE + 5}-{SIZE + 9}", "bytes=-0"])
def test_a_part_behind_the_end_is_refused_with_the_size(client, original, asked):
    answer = client.get(original, headers={"range": asked})

    assert answer.status_code == 416
    assert answer["Content-Range"] == f"bytes */{SIZE}"


@pytest.mark.parametrize("asked", ["bytes=0-5,10-15", "bytes=9-3", "lines=0-5", "bytes=-", "bytes=abc", "bytes=²-"])
def test_what_is_no_single_part_gets_the_whole(client, original, asked):
    answer = client.get(original, headers={"range": asked.encode().decode("latin-1")})

    assert answer.status_code == 200 and answer["Accept-Ranges"] == "bytes"
    assert body(answer) == CONTENT


def test_a_part_of_another_file_is_never_joined_to_this_one(client, original):
    etag = client.get(original)["ETag"]

    same = client.get(original, headers={"range": "bytes=5-9", "if-range": etag})
    other = client.get(original, headers={"range": "bytes=5-9", "if-range": '"another"'})

    assert same.status_code == 206 and body(same) == CONTENT[5:10]
    assert other.status_code == 200 and body(other) == CONTENT


def test_the_browser_keeps_it_by_its_digest_and_shares_it_with_nobody(client, original):
    answer = client.get(original)

    assert Photo.objects.get().sha256 in answer["ETag"]
    assert "private" in answer["Cache-Control"] and "immutable" in answer["Cache-Control"]
    assert client.get(original, headers={"if-none-match": answer["ETag"]}).status_code == 304


@pytest.mark.parametrize(
    "address", ["/photographs/1/", "/files/", "/files/originals/", "/media/", "/photographs/1/../"]
)
def test_there_is_no_listing_and_no_way_in_for_a_stranger(client, address):
    answer = client.get(address)

    assert answer.status_code == 404 or answer.url.startswith("/sign-in/")
