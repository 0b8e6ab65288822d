"""Every kept file is read again: what is missing, changed or unknown is named, and the command fails."""

import tracemalloc
from io import StringIO
from pathlib import Path

import pytest
from django.core.files.base import ContentFile
from django.core.management import call_command
from django.core.management.base import CommandError
from PIL import Image

from records import imaging
from records.models import Duty, FileCheck, Photo
from records.progress import Bar
from records.services.file_checks import check_files
from records.services.photographs import keep_photo
from tests.factories import make_item, make_photo, make_user
from tests.records.pictures.samples import encoded

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture(autouse=True)
def folders(settings, tmp_path):
    settings.DATA_DIR, settings.MEDIA_ROOT, settings.DOCUMENTS_DIR = tmp_path, tmp_path / "files", tmp_path / "papers"
    return tmp_path


@pytest.fixture
def photos() -> list[Photo]:
    item = make_item("R.1")
    shades = ("red", "green", "blue")
    return [keep_photo(file=ContentFile(picture(shade)), name=f"{shade}.jpg", item=item) for shade in shades]


def picture(shade: str) -> bytes:
    return encoded(Image.new("RGB", (64, 48), shade))


def run() -> str:
    out = StringIO()
    call_command("check_files", stdout=out, stderr=StringIO())
    return out.getvalue()


def test_all_is_well(photos):
    said = run()

    assert "3 files" in said and "each as it came" in said
    assert FileCheck.objects.get().is_sound


def test_missing_changed_and_unknown_files_are_named_and_the_command_fails(photos, folders):
    places = [imaging.original_path(photo.path) for photo in photos]
    places[0].unlink()
    spoiled = bytearray(places[1].read_bytes())
    spoiled[len(spoiled) // 2] ^= 1
    places[1].write_bytes(spoiled)
    (folders / "files" / "originals" / "stray.jpg").write_bytes(b"whose?")
    out = StringIO()

    with pytest.raises(CommandError, match="backup"):
        call_command("check_files", stdout=out, stderr=StringIO())

    lines = out.getvalue().splitlines()
    assert [line.split()[0] for line in lines[:3]] == ["changed", "missing", "unknown"]
    assert "green.jpg" in lines[0] and "red.jpg" in lines[1] and "files/originals/stray.jpg" in lines[2]
    assert str(folders) not in out.getvalue()
    check = FileCheck.objects.get()
    assert (check.missing_count, check.changed_count, check.unknown_count, check.read_count) == (1, 1, 1, 2)


def test_small_copies_are_known_by_their_original_and_those_of_nobody_are_not(photos, folders):
    stray = imaging.derivative_path("f" * 64, "screen")
    stray.parent.mkdir(parents=True)
    stray.write_bytes(b"a copy of nothing")

    with pytest.raises(CommandError):
        run()

    assert [Path(one["path"]).name for one in FileCheck.objects.get().found] == [stray.name]


def test_a_file_that_comes_while_all_are_read_is_no_stranger(photos, folders):
    def somebody_uploads(read_count: int, size_bytes: int) -> None:
        if read_count == 1:
            keep_photo(file=ContentFile(picture("white")), name="white.jpg")

    assert check_files(tell=somebody_uploads).is_sound


def test_a_large_file_is_read_in_pieces(folders):
    place = imaging.original_path("originals/ab/large.tif")
    place.parent.mkdir(parents=True)
    with place.open("wb") as file:
        file.truncate(200_000_000)
    make_photo(make_item("R.1"), path="originals/ab/large.tif")
    tracemalloc.start()

    check = check_files(tell=lambda *_: None)

    assert check.changed_count == 1 and check.size_bytes_count == 200_000_000
    assert tracemalloc.get_traced_memory()[1] < 20_000_000
    tracemalloc.stop()


def test_the_last_result_stands_on_a_page_and_trouble_on_the_registrar_s_day(client, photos):
    client.force_login(make_user("registrar"))
    assert "Never read since they were kept" in client.get("/kept-files/").content.decode()
    imaging.original_path(photos[0].path).unlink()
    with pytest.raises(CommandError):
        run()

    page = client.get("/kept-files/").content.decode()

    assert "1 missing" in page and photos[0].get_absolute_url() in page
    assert "Look after the kept files: 1 missing" in client.get("/").content.decode()


def test_the_same_trouble_found_again_is_one_duty(photos):
    imaging.original_path(photos[0].path).unlink()
    for _ in range(2):
        with pytest.raises(CommandError):
            run()

    assert Duty.objects.open().count() == 1


def test_a_bar_is_drawn_only_where_somebody_watches():
    class Terminal(StringIO):
        def isatty(self) -> bool:
            return True

    watched, piped = Terminal(), StringIO()
    for stream in (watched, piped):
        bar = Bar(4, stream)
        bar.show(2, "0.1 GB")
        bar.close()

    assert "2 of 4 files 0.1 GB" in watched.getvalue() and "█" * 15 + "·" * 15 in watched.getvalue()
    assert piped.getvalue() == ""
