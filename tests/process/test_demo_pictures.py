"""The demo's own pictures: the same every time, true to scale, and readable like a camera's file."""

import subprocess
import sys
from datetime import UTC, datetime, timedelta, timezone
from io import BytesIO

import numpy as np
import pytest

from process.demo import pictures
from process.demo.pictures import moulded, pieces, props
from process.demo.pictures.catalogue import SUBJECTS
from process.demo.pictures.field import Field, blur, noise
from process.demo.pictures.relief import clock
from records import imaging

SMALL = 320
RIG = "rig"


@pytest.mark.parametrize("name", pictures.NAMES)
def test_every_picture_is_drawn_and_has_light_and_dark(name):
    image = pictures.draw(name, size_px=SMALL)
    grey = np.asarray(image.convert("L"), dtype=float)
    assert (image.mode, image.size) == ("RGB", (SMALL, SMALL * 3 // 4))
    assert grey.std() > 25
    assert grey.max() > 200


@pytest.mark.parametrize("name", ["medal_obverse", "failed_shell_reverse", RIG])
def test_the_same_call_gives_the_same_picture(name):
    assert pictures.draw(name, size_px=SMALL).tobytes() == pictures.draw(name, size_px=SMALL).tobytes()


def test_full_size_is_1600_by_1200():
    assert pictures.draw("coin_reverse").size == (1600, 1200)


@pytest.mark.parametrize("name", ["medal_obverse", "coin_obverse", "copy_mark", "mask", "mould_reverse"])
def test_the_scale_bar_is_as_long_as_it_says(name):
    frame = pictures.frame_of(name, 1200)
    left, top, right, _ = props.bar_box(frame)
    assert right - left == pytest.approx(props.bar_mm(frame) * frame.px_per_mm)
    row = np.asarray(pictures.draw(name, size_px=1200).convert("L"))[round(top)]
    ink = np.flatnonzero(row[: round(right) + 20] < 60)
    assert ink.max() - ink.min() + 1 == pytest.approx(props.bar_mm(frame) * frame.px_per_mm, abs=1.5)


@pytest.mark.parametrize(
    ("name", "diameter_mm"),
    [
        ("medal_obverse", 58.40),
        ("lightship_reverse", 44.82),
        ("coin_copy_reverse", 31.19),
        ("copy_reverse", 58.34),
    ],
)
def test_the_piece_is_as_wide_as_its_record_says(name, diameter_mm):
    subject, frame = SUBJECTS[name], pictures.frame_of(name, 1200)
    mask = subject.build(frame.piece).mask
    widest = np.flatnonzero((mask > 0.5).any(axis=0))
    assert (widest.max() - widest.min() + 1) / frame.px_per_mm == pytest.approx(diameter_mm, abs=0.35)


def test_a_mould_is_the_negative_of_its_side():
    field = Field(240, 240, 240 / 79)
    positive = pieces.copy(_tower, 58.4, SUBJECTS["copy_obverse"].build(field).material)(field).height
    negative = moulded.mould(_tower, 58.4)(field).height
    at, mirrored = (slice(115, 125), slice(150, 160)), (slice(115, 125), slice(80, 90))
    assert positive[at].mean() - positive[mirrored].mean() == pytest.approx(2.0, abs=0.2)
    assert negative[mirrored].mean() - negative[at].mean() == pytest.approx(-2.0, abs=0.2)


def test_the_edge_knock_stands_at_four_o_clock():
    frame = pictures.frame_of("medal_obverse", 640)
    whole = pieces.cast_medal(pieces.medals.obverse)(frame.piece).mask
    hurt = pieces.cast_medal(pieces.medals.obverse, knocked_h=4)(frame.piece).mask
    rows, columns = np.nonzero(whole - hurt > 0.3)
    x, y = frame.place_px(*clock(4, 29.0))
    assert len(rows) > 3
    assert np.hypot(columns + frame.corner[0] - x, rows + frame.corner[1] - y).max() < 2.2 * frame.px_per_mm


def test_number_and_date_on_the_card_can_be_given():
    plain = pictures.draw("copy_obverse", size_px=SMALL)
    other = pictures.draw("copy_obverse", size_px=SMALL, number="R.2026.4", date_text="1 May 2026")
    difference = np.abs(np.asarray(plain, dtype=int) - np.asarray(other, dtype=int)).sum(axis=2)
    rows, _ = np.nonzero(difference)
    assert rows.min() > 0.85 * plain.height


def test_an_unknown_name_says_which_there_are():
    with pytest.raises(KeyError, match="medal_obverse"):
        pictures.draw("medal_sideways")


@pytest.mark.parametrize(
    "taken_at",
    [
        datetime(2026, 2, 3, 10, 15, tzinfo=timezone(timedelta(hours=1))),
        datetime(2026, 7, 1, 9, 0, tzinfo=UTC),
        datetime(2026, 3, 30, 8, 0),
        None,
    ],
)
def test_the_file_is_read_back_as_written(taken_at):
    content = pictures.jpeg_bytes(pictures.draw("medal_reverse", size_px=SMALL), taken_at, "Ferrigan medal – reverse")
    facts = imaging.examine(BytesIO(content), "OVM.1931.0044 reverse.jpg")
    assert facts.seen.taken_at == taken_at
    assert (facts.seen.taken_at and facts.seen.taken_at.utcoffset()) == (taken_at and taken_at.utcoffset())
    assert (facts.media_type, facts.width_px, facts.height_px) == ("image/jpeg", SMALL, 240)
    assert "demonstration" in facts.seen.camera


def test_drawing_needs_no_django():
    code = "import sys, process.demo.pictures; sys.exit(any(m.split('.')[0] == 'django' for m in sys.modules))"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


def test_blur_keeps_the_mean_and_noise_does_not_depend_on_resolution():
    plane = noise(Field(200, 160, 4), 3.0, 7)
    assert blur(plane, 6).mean() == pytest.approx(plane.mean(), abs=0.02)
    fine = noise(Field(400, 320, 8), 3.0, 7)
    assert np.corrcoef(fine[::2, ::2].ravel(), plane.ravel())[0, 1] > 0.98


def _tower(field, _radius):
    """A plain block to the right of the middle, 2 mm high."""
    relief = pieces.Relief(field)
    relief.dome([(8, -5), (8, 5), (16, 5), (16, -5)], 0.0, 0.5, level_mm=2.0)
    return relief
