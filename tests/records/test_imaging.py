"""Photographs: what is refused and why, what is read from them, and that a file goes where its row goes."""

import hashlib
import struct
import zlib
from datetime import datetime, timedelta, timezone
from io import BytesIO

import numpy as np
import pytest
from django.db import transaction
from PIL import Image, ImageCms, ImageOps

from records import imaging
from records.imaging.facts import PictureRefused, examine_picture
from records.imaging.rendering import render


@pytest.fixture(autouse=True)
def media(settings, tmp_path):
    settings.MEDIA_ROOT = tmp_path
    return tmp_path


def files(folder):
    return sorted(path for path in folder.rglob("*") if path.is_file())


def gradient(width=400, height=300):
    x, y = np.meshgrid(np.linspace(0, 255, width), np.linspace(0, 255, height))
    return Image.fromarray(np.dstack([x, y, 255 - x]).astype(np.uint8))


def encoded(image, kind="JPEG", **options):
    buffer = BytesIO()
    image.save(buffer, kind, **options)
    return buffer


def exif(**tags):
    made = Image.Exif()
    made[0x0110] = tags.get("model", "")
    made[0x0112] = tags.get("orientation", 1)
    details = made.get_ifd(0x8769)
    if "taken" in tags:
        details[0x9003] = tags["taken"]
    if "offset" in tags:
        details[0x9011] = tags["offset"]
    made.get_ifd(0x8825)[1] = "N"
    return made


def png_header(width, height):
    """A PNG that promises many pixels and brings none."""

    def chunk(name, body):
        return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))

    header = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return BytesIO(
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", zlib.compress(b"")) + chunk(b"IEND", b"")
    )


class TestFacts:
    @pytest.mark.parametrize(
        ("kind", "media_type", "extension"),
        [
            ("JPEG", "image/jpeg", "jpg"),
            ("PNG", "image/png", "png"),
            ("TIFF", "image/tiff", "tif"),
            ("WEBP", "image/webp", "webp"),
        ],
    )
    def test_digest_size_and_type_of_each_format(self, kind, media_type, extension):
        file = encoded(gradient(), kind)
        facts = imaging.examine(file, f"OVM.1931.0044.{extension}")
        assert facts.sha256 == hashlib.sha256(file.getvalue()).hexdigest()
        assert (facts.size_bytes, facts.media_type, facts.extension) == (
            len(file.getvalue()),
            media_type,
            extension,
        )
        assert (facts.width_px, facts.height_px, facts.seen.taken_at, facts.seen.orientation) == (400, 300, None, 1)

    def test_time_is_aware_only_if_the_camera_wrote_its_offset(self):
        aware = encoded(gradient(), exif=exif(taken="2026:02:03 10:15:00", offset="+01:00"))
        naive = encoded(gradient(), exif=exif(taken="2026:02:03 10:15:00"))
        zone = timezone(timedelta(hours=1))
        assert imaging.examine(aware, "a.jpg").seen.taken_at == datetime(2026, 2, 3, 10, 15, tzinfo=zone)
        assert imaging.examine(naive, "a.jpg").seen.taken_at == datetime(2026, 2, 3, 10, 15)

    @pytest.mark.parametrize("taken", ["0000:00:00 00:00:00", "2026:13:40 10:00:00", "yesterday"])
    def test_a_clock_never_set_gives_no_time(self, taken):
        assert imaging.examine(encoded(gradient(), exif=exif(taken=taken)), "a.jpg").seen.taken_at is None

    def test_camera_and_size_of_a_picture_taken_on_its_side(self):
        file = encoded(gradient(400, 300), exif=exif(model="Bench camera\x00", orientation=6))
        facts = imaging.examine(file, "a.jpg")
        assert (facts.seen.camera, facts.seen.orientation, facts.width_px, facts.height_px) == (
            "Bench camera",
            6,
            300,
            400,
        )

    def test_a_name_without_ending_is_judged_by_content(self):
        assert imaging.examine(encoded(gradient(), "PNG"), "blob").media_type == "image/png"


class TestRefusals:
    @pytest.mark.parametrize(
        ("content", "name", "word"),
        [
            (b"%PDF-1.7\n%...", "report.jpg", "PDF"),
            (b'<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"/>', "drawing.png", "SVG"),
            (b"<svg/>", "drawing.svg", ".svg"),
            (b"just words", "notes.jpg", "is not a picture"),
            (b"%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 10 10\n", "plate.jpg", "PostScript"),
            (b"GIF89a....", "moving.jpg", "GIF"),
            (b"\x00\x00\x00\x18ftypheic", "phone.heic", "damaged"),
            (b"\x00\x00\x00\x18ftypqt  ", "film.jpg", "film"),
            (b"", "nothing.jpg", "empty"),
            (b"\xff\xd8\xff", "medal.php.jpg", "two endings"),
            (b"\xff\xd8\xff", "medal.jpg.exe", "two endings"),
            (b"\xff\xd8\xff\xe0rubbish", "medal.jpg", "damaged"),
        ],
    )
    def test_one_sentence_says_why(self, content, name, word):
        with pytest.raises(PictureRefused) as refusal:
            imaging.examine(BytesIO(content), name)
        sentence = str(refusal.value)
        assert word in sentence
        assert name in sentence
        assert sentence.endswith(".")
        assert "\n" not in sentence

    @pytest.mark.parametrize("share", [0.95, 0.5, 0.1])
    @pytest.mark.parametrize("kind", ["JPEG", "PNG", "TIFF", "WEBP"])
    def test_a_file_cut_off_on_the_way(self, kind, share):
        whole = encoded(gradient(), kind).getvalue()
        with pytest.raises(PictureRefused):
            imaging.examine(BytesIO(whole[: int(len(whole) * share)]), "a." + kind.lower())

    @pytest.mark.parametrize(
        ("width", "height"), [(12_000, 12_000), (9_460, 9_460), (20_000, 10_000), (60_000, 60_000)]
    )
    @pytest.mark.filterwarnings("ignore::PIL.Image.DecompressionBombWarning")
    def test_too_many_pixels_is_known_before_decoding(self, width, height):
        with pytest.raises(PictureRefused, match=r"89\.5 megapixels"):
            imaging.examine(png_header(width, height), "large.png")

    def test_too_many_bytes(self):
        file = encoded(gradient())
        with pytest.raises(PictureRefused, match="MB"):
            examine_picture(file, "a.jpg", limit_bytes=len(file.getvalue()) - 1, sizes_px={"one": 320})
        assert examine_picture(file, "a.jpg", limit_bytes=len(file.getvalue()), sizes_px={"one": 320})

    def test_a_moving_picture(self):
        file = encoded(gradient(), "WEBP", save_all=True, append_images=[gradient().rotate(90)])
        with pytest.raises(PictureRefused, match="moving"):
            imaging.examine(file, "a.webp")


class TestKeeping:
    @pytest.mark.django_db(transaction=True)
    def test_the_original_stands_byte_for_byte_after_commit(self, media):
        file = encoded(gradient(), exif=exif(model="Bench camera"))
        facts = imaging.examine(file, "a.jpg")
        with transaction.atomic():
            stored = imaging.keep(file, facts)
            assert not imaging.original_path(stored).exists()
        assert stored == f"originals/{facts.sha256[:2]}/{facts.sha256[2:]}.jpg"
        assert imaging.original_path(stored).read_bytes() == file.getvalue()
        assert len(files(media)) == 1

    @pytest.mark.django_db(transaction=True)
    def test_a_rollback_leaves_nothing_behind(self, media):
        file = encoded(gradient())
        facts = imaging.examine(file, "a.jpg")
        with pytest.raises(RuntimeError), transaction.atomic():
            imaging.keep(file, facts)
            raise RuntimeError("the row was refused")
        assert files(media) == []

    @pytest.mark.django_db(transaction=True)
    def test_a_rolled_back_savepoint_leaves_nothing_behind(self, media):
        file = encoded(gradient())
        facts = imaging.examine(file, "a.jpg")
        with transaction.atomic(), pytest.raises(RuntimeError), transaction.atomic():
            imaging.keep(file, facts)
            raise RuntimeError("the row was refused")
        assert files(media) == []

    @pytest.mark.django_db(transaction=True)
    def test_a_rollback_does_not_take_the_same_picture_kept_earlier(self, media):
        file = encoded(gradient())
        facts = imaging.examine(file, "a.jpg")
        stored = imaging.keep(file, facts)
        with pytest.raises(RuntimeError), transaction.atomic():
            imaging.keep(file, facts)
            raise RuntimeError("the row was refused")
        assert files(media) == [imaging.original_path(stored)]

    @pytest.mark.django_db(transaction=True)
    def test_staged_before_the_transaction_and_never_kept(self, media):
        file = encoded(gradient())
        with imaging.stage(file, imaging.examine(file, "a.jpg")):
            assert len(files(media)) == 1
        assert files(media) == []

    def test_what_a_killed_process_left_is_swept(self, media):
        leftover = media / "originals" / "ab" / ".unfinished-xyz"
        leftover.parent.mkdir(parents=True)
        leftover.write_bytes(b"half")
        assert imaging.remove_unfinished() == 0
        assert imaging.remove_unfinished(older_than_s=-1) == 1
        assert files(media) == []


class TestSmallCopies:
    @pytest.mark.django_db(transaction=True)
    def test_made_once_in_three_sizes_without_the_cameras_notes(self):
        file = encoded(gradient(3000, 2000), exif=exif(model="Bench camera"), comment=b"where it was taken")
        facts = imaging.examine(file, "a.jpg")
        paths = imaging.derive(imaging.keep(file, facts))
        assert paths["screen"] == imaging.derivative_path(facts.sha256, "screen")
        sizes = {}
        for size, path in paths.items():
            with Image.open(path) as image:
                sizes[size] = image.size
                assert not image.getexif()
                assert "comment" not in image.info
        assert sizes == {"thumbnail": (320, 213), "print": (1200, 800), "screen": (1600, 1067)}
        before = {path: path.stat().st_mtime_ns for path in paths.values()}
        imaging.derive(f"originals/{facts.sha256[:2]}/{facts.sha256[2:]}.jpg")
        assert before == {path: path.stat().st_mtime_ns for path in paths.values()}

    @pytest.mark.parametrize("orientation", range(1, 9))
    def test_every_orientation_stands_upright(self, orientation):
        file = encoded(gradient(200, 120), "PNG", exif=exif(orientation=orientation))
        expected = ImageOps.exif_transpose(Image.open(file))
        assert_alike(small(file), expected, 4)

    def test_grey_of_16_bits_is_scaled_not_clipped(self):
        """MEASURED by hand: Pillow's plain conversion makes this picture pure white."""
        ramp = np.linspace(0, 65535, 256).astype(np.uint16)[None, :].repeat(64, axis=0)
        for kind in ("TIFF", "PNG"):
            image = small(encoded(Image.fromarray(ramp), kind))
            assert_alike(image, Image.fromarray((ramp >> 8).astype(np.uint8)).convert("RGB"), 4)

    def test_transparency_stands_on_white(self):
        image = small(encoded(Image.new("RGBA", (40, 40), (255, 0, 0, 0)), "PNG"))
        assert image.getpixel((20, 20)) == (255, 255, 255)

    def test_palette_pictures_keep_their_colours(self):
        image = small(encoded(gradient().quantize(64), "PNG"))
        assert_alike(image, gradient(), 24)

    def test_an_embedded_profile_is_followed(self):
        """A picture tagged sRGB must come back as it was (LittleCMS converts sRGB to sRGB)."""
        lab = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB"))
        plain = small(encoded(gradient(), icc_profile=lab.tobytes(), quality=98))
        assert_alike(plain, gradient(), 8)

    def test_cmyk_becomes_rgb(self):
        image = small(encoded(gradient().convert("CMYK"), quality=95))
        assert image.mode == "RGB"
        assert_alike(image, gradient(), 12)

    def test_a_broken_profile_does_not_stop_the_picture(self):
        assert_alike(small(encoded(gradient(), icc_profile=b"no profile at all", quality=95)), gradient(), 8)


def small(file):
    file.seek(0)
    return Image.open(BytesIO(render(file, {"one": 320})["one"])).convert("RGB")


def assert_alike(image, expected, tolerance):
    expected = expected.convert("RGB").resize(image.size, Image.Resampling.BICUBIC)
    difference = np.asarray(image, dtype=float) - np.asarray(expected, dtype=float)
    assert np.abs(difference).mean() < tolerance
