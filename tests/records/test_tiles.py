"""A closer look at a large photograph: cut into tiles once, each piece as sharp as it was taken, within a bound."""

import os
from io import BytesIO

import numpy as np
import pytest
from django.core.files.base import ContentFile
from PIL import Image
from skimage import data
from skimage.metrics import peak_signal_noise_ratio

from records import imaging
from records.imaging import tiles
from records.imaging.rendering import TURNS

COINS = data.coins()  # 303 × 384 greys, packaged with scikit-image


@pytest.fixture
def media(settings, tmp_path):
    settings.MEDIA_ROOT = tmp_path
    return tmp_path


def kept(picture: Image.Image, kind="PNG", **options) -> str:
    out = BytesIO()
    picture.save(out, kind, **options)
    file = ContentFile(out.getvalue(), name=f"a.{kind.lower()}")
    with imaging.stage(file, imaging.examine(file, file.name)) as staged:
        return staged.keep()


@pytest.fixture
def wide(media, db, django_capture_on_commit_callbacks) -> tuple[str, Image.Image]:
    """The coins 7 × 7 times: 2688 × 2121 pixels, three tiles across and three down."""
    picture = Image.fromarray(np.tile(COINS, (7, 7)))
    with django_capture_on_commit_callbacks(execute=True):
        return kept(picture), picture


def grey_of(content: bytes) -> np.ndarray:
    return np.asarray(Image.open(BytesIO(content)).convert("L"))


@pytest.mark.parametrize("box", [(1000, 1000, 1384, 1303), (0, 0, 64, 64), (2600, 2000, 2688, 2121), (5, 3, 1301, 900)])
def test_a_piece_across_tiles_is_the_piece_of_the_original(wide, box):
    stored, picture = wide

    found = grey_of(tiles.crop(stored, box))

    assert found.shape == (box[3] - box[1], box[2] - box[0])
    assert peak_signal_noise_ratio(np.asarray(picture.crop(box)), found) > 33  # two JPEG savings apart


def test_the_whole_is_as_large_as_a_screen_and_shows_no_seams(wide):
    stored, picture = wide
    small = grey_of(tiles.crop(stored, (0, 0, *picture.size)))
    naive = np.asarray(picture.resize((small.shape[1], small.shape[0]), Image.Resampling.BICUBIC))

    assert max(small.shape) == tiles.LARGEST_PX
    assert peak_signal_noise_ratio(naive, small) > 26


def test_a_picture_is_decoded_once_however_often_one_looks(wide, monkeypatch):
    stored, _ = wide
    tiles.crop(stored, (0, 0, 500, 500))
    monkeypatch.setattr(tiles, "open_picture", None)

    assert tiles.crop(stored, (700, 700, 1400, 1300))


@pytest.mark.parametrize("orientation", [3, 6, 8])
def test_a_picture_on_its_side_is_cut_upright(media, db, django_capture_on_commit_callbacks, orientation):
    picture = Image.fromarray(COINS)
    exif = Image.Exif()
    exif[0x0112] = orientation
    with django_capture_on_commit_callbacks(execute=True):
        stored = kept(picture, "JPEG", exif=exif, quality=95)
    upright = picture.transpose(TURNS[orientation])

    found = grey_of(tiles.crop(stored, (0, 0, *upright.size)))

    assert peak_signal_noise_ratio(np.asarray(upright), found) > 30


def test_grey_of_sixteen_bits_is_scaled_and_not_clipped(media, db, django_capture_on_commit_callbacks):
    with django_capture_on_commit_callbacks(execute=True):
        stored = kept(Image.fromarray(COINS.astype(np.uint16) * 257), "TIFF")

    found = grey_of(tiles.crop(stored, (0, 0, 384, 303)))

    assert peak_signal_noise_ratio(COINS, found) > 33


def test_tiles_are_bounded_and_those_looked_at_longest_ago_go_first(media, db, django_capture_on_commit_callbacks):
    with django_capture_on_commit_callbacks(execute=True):
        stored = [kept(Image.fromarray(np.roll(COINS, shift))) for shift in range(3)]
    for age, one in enumerate(stored):
        tiles.crop(one, (0, 0, 50, 50))
        first = tiles.tile_path(one, 0, 0)
        os.utime(first, (1_000_000 + age, 1_000_000 + age))
    tiles.crop(stored[0], (0, 0, 50, 50))  # looked at again just now

    assert tiles.make_room(limit_bytes=1) == 2

    assert [tiles.tile_path(one, 0, 0).exists() for one in stored] == [True, False, False]
    assert tiles.crop(stored[1], (0, 0, 50, 50))  # made again when asked for


def test_tiles_are_no_strangers_among_the_kept_files(wide):
    stored, _ = wide
    tiles.cut(stored)
    path = tiles.tile_path(stored, 2, 2)

    assert path.exists() and path.parent == imaging.derivative_path(digest_of(stored), "screen").parent
    assert path.stem.partition("-")[0] == digest_of(stored)[2:]


def digest_of(stored: str) -> str:
    original = imaging.original_path(stored)
    return original.parent.name + original.stem
