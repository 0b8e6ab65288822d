"""Files that are not what they say, sent through the page: one clear sentence each, and nothing left behind.

Shapes of the files: PNG and APNG by W3C PNG (third edition), GIF by GIF89a, ZIP by APPNOTE 6.3.10, section 4.3.
"""

import struct
import zipfile
import zlib
from collections.abc import Callable
from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from django.conf import settings
from django.core.files.uploadedfile import SimpleUploadedFile
from PIL import Image

from records import imaging
from records.models import Photo
from tests.factories import make_item, make_user
from tests.records.pictures.samples import COINS, encoded, tiff

pytestmark = pytest.mark.django_db(transaction=True)
ADD = "/things/R.1/photographs/new/"
FRAMES = [Image.new("RGB", (40, 30), colour) for colour in ("red", "blue", "green")]


@pytest.fixture
def technician(client):
    client.force_login(make_user("technician"))
    make_item("R.1")
    return client


def with_archive() -> bytes:
    archive = BytesIO()
    with zipfile.ZipFile(archive, "w") as inside:
        inside.writestr("run.js", "alert(1)")
    return COINS["coins.jpg"]() + archive.getvalue()


def with_pdf() -> bytes:
    return encoded(FRAMES[0], comment=b"%PDF-1.7\n1 0 obj<</Type/Catalog>>endobj")


def gif_and_script() -> bytes:
    """Its size, read as JavaScript, begins a comment."""
    return b"GIF89a/*" + encoded(FRAMES[0], "GIF")[8:] + b"*/=1;alert(1)"


def png(width: int, height: int, rows: bytes = b"") -> bytes:
    """Small as a file, as large as its head says when it is unfolded."""

    def chunk(name: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))

    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")


def moving(kind: str) -> Callable[[], bytes]:
    return lambda: encoded(FRAMES[0], kind, save_all=True, append_images=FRAMES[1:])


def cut(name: str, share: float) -> Callable[[], bytes]:
    return lambda: COINS[name]()[: int(len(COINS[name]()) * share)]


HOSTILE: dict[str, tuple[str, Callable[[], bytes], str]] = {
    "an archive behind a JPEG": ("medal.jpg", with_archive, "a picture and an archive in one"),
    "a PDF within a JPEG": ("medal.jpg", with_pdf, "a picture and a PDF in one"),
    "a GIF that is script": ("medal.jpg", gif_and_script, "GIF"),
    "a moving GIF": ("medal.gif", moving("GIF"), "not a photograph"),
    "a moving GIF with another ending": ("medal.png", moving("GIF"), "GIF"),
    "a moving WebP": ("medal.webp", moving("WEBP"), "moving picture"),
    "a moving PNG": ("medal.png", moving("PNG"), "moving picture"),
    "nothing": ("medal.jpg", lambda: b"", "empty"),
    "half a JPEG": ("medal.jpg", cut("coins.jpg", 0.5), "cut off"),
    "a JPEG without its last bytes": ("medal.jpg", cut("coins.jpg", 0.98), "cut off"),
    "half a TIFF of 16 bits": ("medal.tif", cut("coins-grey-16.tif", 0.5), "damaged"),
    "two endings": ("medal.php.jpg", COINS["coins.jpg"], "two endings"),
    "a program's ending": ("medal.jpg.exe", COINS["coins.jpg"], "two endings"),
    "SVG": ("medal.png", lambda: b'<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>', "SVG"),
    "SVG by name": ("medal.svg", lambda: b"<svg/>", ".svg"),
    "PostScript": ("plate.tif", lambda: b"%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 9 9\n", "PostScript"),
    "PostScript with a preview": ("plate.jpg", lambda: b"\xc5\xd0\xd3\xc6" + bytes(28), "PostScript"),
    "900 megapixels in a few bytes": ("bomb.png", lambda: png(30_000, 30_000), "89.5 megapixels"),
    "180 megapixels": ("bomb.png", lambda: png(13_417, 13_417), "89.5 megapixels"),
    "just below the alarm of the reader": ("bomb.png", lambda: png(13_370, 13_370), "89.5 megapixels"),
    "one row above the limit": ("large.png", lambda: png(9460, 9459), "89.5 megapixels"),
    "a text that unfolds": ("bomb.png", lambda: text_bomb(), "damaged"),
}  # fmt: skip


def text_bomb() -> bytes:
    """A compressed text of 80 MB before the picture."""
    body = b"Comment\0\0" + zlib.compress(bytes(80_000_000), 9)
    chunk = struct.pack(">I", len(body)) + b"zTXt" + body + struct.pack(">I", zlib.crc32(b"zTXt" + body))
    whole = png(1, 1, b"\0\0")
    return whole[:33] + chunk + whole[33:]


def kept_files() -> list[Path]:
    return [path for path in Path(settings.MEDIA_ROOT).rglob("*") if path.is_file()]


@pytest.mark.filterwarnings("ignore::PIL.Image.DecompressionBombWarning")
@pytest.mark.parametrize("which", HOSTILE)
def test_it_is_refused_with_one_sentence_and_nothing_is_left(technician, which):
    name, make, word = HOSTILE[which]
    answer = technician.post(ADD, {"files": SimpleUploadedFile(name, make()), "view": "overall"})

    (sentence, *more) = answer.context["form"].errors["files"]
    assert answer.status_code == 422 and not more
    assert word in sentence and sentence.endswith(".") and "\n" not in sentence
    assert not Photo.objects.exists() and kept_files() == []


def test_just_within_the_limit_is_taken():
    """9,459 × 9,459 is 89,472,681, below the 89,478,485 at which Pillow begins to warn."""
    side = 9459
    content = png(side, side, bytes((side + 1) * side))

    assert imaging.examine(BytesIO(content), "large.png").width_px == side


def test_the_picture_behind_a_telephones_own_trailer_is_taken():
    """Telephones lay a film or their own notes behind the picture; that is no archive."""
    assert imaging.examine(BytesIO(COINS["coins.jpg"]() + bytes(500) + b"notes of the maker"), "medal.jpg")


def test_a_grey_of_sixteen_bits_keeps_its_steps_in_what_is_shown(technician):
    ramp = np.linspace(0, 65535, 512).astype(np.uint16)[None, :].repeat(64, axis=0)
    technician.post(ADD, {"files": SimpleUploadedFile("ramp.tif", tiff(ramp)), "view": "overall"})

    shown = technician.get(f"/photographs/{Photo.objects.get().pk}/screen/")

    greys = np.asarray(Image.open(BytesIO(b"".join(shown.streaming_content))).convert("L"), float)[32]
    assert np.abs(greys - np.linspace(0, 255, 512)).max() < 4
