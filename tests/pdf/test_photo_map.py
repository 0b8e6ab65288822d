"""Findings drawn on a photograph of a paper: where they lie, told apart without colour, numbers that stay readable."""

import subprocess
from io import BytesIO
from itertools import combinations

import numpy as np
import pytest
from PIL import Image
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from records.annotating.labels import places
from records.pdf import blocks as b
from records.pdf import fonts
from records.pdf.flow import Room
from records.pdf.photo_map.patterns import fill

PATTERNS = ("plain", "loss", "opening", "deposit", "shape", "surface")
ROOM = Room(170 * mm, 240 * mm)


def grey(pixels=(800, 600), shade=128) -> bytes:
    out = BytesIO()
    Image.new("RGB", pixels, (shade,) * 3).save(out, "JPEG", quality=95)
    return out.getvalue()


def drawn(tmp_path, draw, size, dpi=144) -> np.ndarray:
    """What poppler makes of it, as greys from the top."""
    fonts.covered()
    canvas = Canvas(str(tmp_path / "one.pdf"), pagesize=size)
    draw(canvas)
    canvas.showPage()
    canvas.save()
    asked = ["pdftoppm", "-r", str(dpi), "-gray", "-singlefile", tmp_path / "one.pdf", tmp_path / "one"]
    subprocess.run(asked, check=True)
    return np.asarray(Image.open(tmp_path / "one.pgm"))


def framed(shape: b.MapShape, window=(0, 0, 800, 600)) -> b.MappedPhoto:
    return b.MappedPhoto(grey(), "", window, (shape,))


def printed(tmp_path, photo: b.MappedPhoto) -> np.ndarray:
    frame = photo.frame(400, 300)
    return drawn(tmp_path, lambda canvas: frame.drawOn(canvas, 0, 0), (400, 300), dpi=72)


def marked(picture: np.ndarray) -> tuple[float, float]:
    """The middle of what is neither ground nor its noise, across and down in parts of the picture."""
    down, across = np.nonzero(abs(picture.astype(int) - 128) > 40)
    return float(across.mean() / picture.shape[1]), float(down.mean() / picture.shape[0])


def test_a_shape_lies_where_its_pixels_are(tmp_path):
    picture = printed(tmp_path, framed(b.MapShape("rectangle", ((580, 80), (620, 120)), "7")))

    # 600 of 800 across, 100 of 600 down; the number beside it shifts the middle a little.
    assert marked(picture) == pytest.approx((0.76, 0.16), abs=0.03)


def test_in_a_detail_it_lies_where_it_does_in_the_whole(tmp_path):
    window = (500, 0, 700, 150)
    picture = printed(tmp_path, framed(b.MapShape("rectangle", ((580, 60), (620, 90)), "7"), window))

    assert marked(picture) == pytest.approx((0.52, 0.49), abs=0.04)


@pytest.mark.parametrize("kind", ["point", "line", "polygon", "rectangle"])
def test_what_reaches_over_the_edge_stays_inside_the_picture(tmp_path, kind):
    points = {"point": ((799, 1),)}.get(kind, ((700, -200), (900, 100), (780, 300)))[: 2 if kind == "rectangle" else 3]
    frame = framed(b.MapShape(kind, points, "12", "loss")).frame(200, 150)

    def draw(canvas):
        frame.drawOn(canvas, 50, 50)

    picture = drawn(tmp_path, draw, (300, 250), dpi=72)

    outside = np.ones(picture.shape, bool)
    outside[49:201, 49:251] = False
    assert (picture[outside] == 255).all()
    assert (abs(picture[51:199, 51:249].astype(int) - 128) > 60).any()


def test_each_pattern_is_told_from_every_other_in_black_and_white(tmp_path):
    """Far apart pixel by pixel and with ink of its own: what a photocopy of one threshold still shows."""
    prints = {}
    for pattern in PATTERNS:
        grey_of = drawn(tmp_path, lambda canvas, p=pattern: fill(canvas, p, (0, 0, 60, 60)), (60, 60))
        prints[pattern] = grey_of < 128

    assert not prints["plain"].any()
    for one, other in combinations(PATTERNS, 2):
        assert (prints[one] != prints[other]).mean() > 0.05, (one, other)


def test_numbers_of_findings_that_lie_close_do_not_hide_each_other():
    shapes = [(100 + i, 100 + i, 110 + i, 110 + i) for i in range(6)]
    found = places(shapes, [(9, 11)] * 6, (300, 200))

    for one, other in combinations(found, 2):
        assert one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]


def test_a_number_in_a_corner_stays_in_the_picture():
    ((left, bottom, right, top),) = places([(295, 195, 300, 200)], [(12, 11)], (300, 200))

    assert left >= 0 and bottom >= 0 and right <= 300 and top <= 200


def test_the_cover_holds_the_map_with_its_legend_beside_the_facts():
    photo = b.MappedPhoto(grey(), "Obverse.", (0, 0, 800, 600), (), (("loss", "loss: crossed lines"),))
    (table,) = b.Cover(photo, (b.Fact("Object", "OVM.1931.0044"),), is_large=True).flow(ROOM)

    _, height = table.wrap(ROOM.width, ROOM.height)

    assert height < ROOM.height / 2
