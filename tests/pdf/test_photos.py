"""Photographs for print: upright, sRGB, no larger than paper can show."""

from io import BytesIO

import pytest
from PIL import Image

from records.pdf.photos import Photo, PhotoFrame, PhotoUnreadable, printable
from tests.pdf.pictures import medal


def as_bytes(image: Image.Image, form: str, **options: object) -> bytes:
    out = BytesIO()
    image.save(out, form, **options)
    return out.getvalue()


def test_a_large_photograph_is_printed_at_300_dots_per_inch() -> None:
    jpeg, ratio = printable(medal(900), 144.0)  # 2 inches
    assert Image.open(BytesIO(jpeg)).size == (600, 600)
    assert ratio == 1


def test_the_camera_s_orientation_is_obeyed() -> None:
    exif = Image.Exif()
    exif[0x0112] = 6  # turned by a quarter, Exif 2.32 table 4
    jpeg, ratio = printable(as_bytes(Image.new("RGB", (80, 40)), "JPEG", exif=exif), 72.0)
    assert ratio == 2
    assert Image.open(BytesIO(jpeg)).size == (40, 80)


@pytest.mark.parametrize("mode", ["RGBA", "LA", "P", "L", "CMYK", "1", "I;16"])
def test_every_mode_of_colour_becomes_rgb_or_grey(mode: str) -> None:
    form = "TIFF" if mode == "CMYK" else "PNG"
    jpeg, _ = printable(as_bytes(Image.new(mode, (20, 10)), form), 72.0)
    assert Image.open(BytesIO(jpeg)).mode in ("RGB", "L")


def test_what_is_transparent_is_white_on_paper() -> None:
    jpeg, _ = printable(as_bytes(Image.new("RGBA", (20, 10), (0, 0, 0, 0)), "PNG"), 72.0)
    assert Image.open(BytesIO(jpeg)).getpixel((5, 5)) == (255, 255, 255)


def test_a_picture_that_is_none_is_refused() -> None:
    with pytest.raises(PhotoUnreadable, match="cannot be read as a picture"):
        printable(b"%PDF-1.7", 72.0)


def test_a_picture_of_two_hundred_megapixels_is_refused() -> None:
    with pytest.raises(PhotoUnreadable):
        printable(as_bytes(Image.new("1", (20_000, 10_000)), "PNG"), 72.0)


def test_a_tall_photograph_keeps_its_shape_within_the_limit() -> None:
    frame = PhotoFrame(Photo(as_bytes(Image.new("L", (10, 100)), "PNG")), 100.0, 200.0)
    assert frame.wrap() == (20.0, 200.0)
