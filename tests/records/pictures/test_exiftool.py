"""What a camera wrote, read here and by Debian's exiftool (Phil Harvey's, an independent reader and writer)."""

import json
import subprocess
from datetime import datetime, timedelta, timezone
from io import BytesIO
from pathlib import Path

import pytest

from records import imaging
from tests.records.pictures.samples import COINS
from tests.tools import tool

WRITTEN = {
    "Make": "Bench", "Model": "Bench view 24", "LensModel": "60 mm macro", "ExposureTime": "1/125", "FNumber": "8",
    "ISO": "100", "FocalLength": "60", "DateTimeOriginal": "2026:02:03 10:15:00", "OffsetTimeOriginal": "+01:00",
    "GPSLatitude": "51.5", "GPSLatitudeRef": "S", "GPSLongitude": "7.25", "GPSLongitudeRef": "W",
}  # fmt: skip
NAMES = ["coins.jpg", "coins.png", "coins.webp", "coins.heic", "coins-grey-8.tif"]


@pytest.fixture(scope="session")
def exiftool() -> str:
    return tool("exiftool")


def tagged(exiftool: str, folder: Path, name: str, tags: dict[str, str]) -> bytes:
    path = folder / name
    path.write_bytes(COINS[name]())
    written = [f"-{tag}={value}" for tag, value in tags.items()]
    subprocess.run([exiftool, "-q", "-overwrite_original", *written, path], check=True)
    return path.read_bytes()


def by_exiftool(exiftool: str, content: bytes) -> dict[str, object]:
    answer = subprocess.run([exiftool, "-j", "-n", "-G", "-"], input=content, capture_output=True, check=True)
    return json.loads(answer.stdout)[0]


@pytest.mark.parametrize("name", NAMES)
def test_both_read_the_same_from_every_format(exiftool, tmp_path, name):
    content = tagged(exiftool, tmp_path, name, WRITTEN)

    seen = imaging.examine(BytesIO(content), name).seen

    theirs = by_exiftool(exiftool, content)
    zone = timezone(timedelta(hours=1))
    assert seen.taken_at == datetime(2026, 2, 3, 10, 15, tzinfo=zone)
    assert theirs["EXIF:DateTimeOriginal"] == f"{seen.taken_at:%Y:%m:%d %H:%M:%S}"
    assert (seen.camera, seen.lens) == (theirs["EXIF:Model"], theirs["EXIF:LensModel"])
    assert seen.exposure == "1/125 s, f/8, ISO 100, 60 mm"
    place = theirs["Composite:GPSLatitude"], theirs["Composite:GPSLongitude"]
    assert place == (-51.5, -7.25)
    assert (seen.latitude_deg, seen.longitude_deg) == pytest.approx(place)


@pytest.mark.parametrize("orientation", range(1, 9))
def test_both_read_the_same_way_up(exiftool, tmp_path, orientation):
    content = tagged(exiftool, tmp_path, "coins.jpg", {"Orientation#": str(orientation)})

    facts = imaging.examine(BytesIO(content), "coins.jpg")

    assert facts.seen.orientation == by_exiftool(exiftool, content)["EXIF:Orientation"]
    assert (facts.width_px > facts.height_px) == (orientation < 5)


@pytest.mark.parametrize("name", NAMES)
def test_small_copies_tell_exiftool_nothing_of_camera_time_or_place(exiftool, tmp_path, name):
    content = tagged(exiftool, tmp_path, name, WRITTEN)

    for copy in imaging.examine(BytesIO(content), name).copies.values():
        groups = {tag.partition(":")[0] for tag in by_exiftool(exiftool, copy)}
        assert groups <= {"SourceFile", "ExifTool", "File", "JFIF", "Composite"}


def test_a_receiver_without_a_fix_gives_no_place_and_takes_no_time_away(exiftool, tmp_path):
    tags = {"DateTimeOriginal": "2026:02:03 10:15:00", "GPSLatitudeRef": "N"}

    seen = imaging.examine(BytesIO(tagged(exiftool, tmp_path, "coins.jpg", tags)), "coins.jpg").seen

    assert seen.latitude_deg is None
    assert seen.taken_at == datetime(2026, 2, 3, 10, 15)
