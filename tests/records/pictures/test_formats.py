"""Every format that is taken shows the same picture; traps that a plain reader falls into."""

from io import BytesIO

import numpy as np
import pytest
import skimage.data
from PIL import Image
from skimage.filters import threshold_otsu
from skimage.measure import label, regionprops

from records import imaging
from tests.records.pictures.samples import COINS, coins, encoded, heic, tiff


def shown(content: bytes, name: str, size: str = "screen") -> Image.Image:
    """The small copy of an upload, as a browser would get it."""
    return Image.open(BytesIO(imaging.examine(BytesIO(content), name).copies[size]))


def counted(grey: np.ndarray) -> int:
    """Things brighter than the ground and larger than a speck (Otsu's threshold, 1979, as scikit-image has it)."""
    regions = regionprops(label(grey > threshold_otsu(grey)))
    return sum(region.area > 300 for region in regions)


@pytest.mark.parametrize("name", COINS)
def test_the_coins_are_the_same_in_every_format(name):
    picture = shown(COINS[name](), name)

    apart = np.abs(np.asarray(picture.convert("L"), float) - coins())
    assert picture.mode == "RGB" and picture.size == (384, 303)
    # A float file has no known white: it is stretched from its darkest to its brightest value.
    assert apart.mean() < (6 if "float" in name else 2)
    assert counted(np.asarray(picture.convert("L"))) == counted(coins())


@pytest.mark.parametrize("name", ["chelsea", "coffee", "rocket", "retina"])
def test_photographs_in_colour_keep_their_colours(name):
    original = Image.fromarray(getattr(skimage.data, name)())

    copy = shown(encoded(original, "PNG"), f"{name}.png", "thumbnail")

    original.thumbnail((320, 320), Image.Resampling.BICUBIC)
    assert np.abs(np.asarray(copy, float) - np.asarray(original, float)).mean() < 4


def test_a_grey_ramp_of_sixteen_bits_is_scaled_and_not_clipped():
    """Measured: a plain conversion makes every grey above 255 of 65,535 white, and says nothing."""
    ramp = np.linspace(0, 65535, 512).astype(np.uint16)[None, :].repeat(64, axis=0)

    greys = np.asarray(shown(tiff(ramp), "ramp.tif").convert("L"), float)[32]

    assert np.abs(greys - np.linspace(0, 255, 512)).max() < 4


@pytest.mark.parametrize("share", [0.98, 0.5, 0.02])
@pytest.mark.parametrize("name", ["coins.jpg", "coins.heic", "coins-grey-16.tif", "coins-packed-16.tiff"])
def test_a_file_that_broke_off_is_refused(name, share):
    """Measured: Pillow's verify() finds nothing wrong with a JPEG of which two per cent are left."""
    whole = COINS[name]()

    with pytest.raises(imaging.PictureRefused, match="damaged"):
        imaging.examine(BytesIO(whole[: int(len(whole) * share)]), name)


def test_zeroed_bytes_pass_the_decoder_and_are_found_only_by_the_digest():
    """Measured: 64 zeroed bytes decode without complaint, which is why originals carry a digest."""
    whole = COINS["coins.jpg"]()
    middle = len(whole) // 2
    spoiled = whole[:middle] + bytes(64) + whole[middle + 64 :]

    facts = [imaging.examine(BytesIO(content), "coins.jpg") for content in (whole, spoiled)]

    assert facts[0].size_bytes == facts[1].size_bytes and facts[0].sha256 != facts[1].sha256


def test_a_telephone_picture_lying_on_its_side_stands_upright():
    exif = Image.Exif()
    exif[0x0112] = 6
    tall = Image.fromarray(np.repeat(coins()[..., None], 3, axis=2))

    facts = imaging.examine(BytesIO(heic(tall, exif=exif.tobytes())), "phone.heic")

    copy = Image.open(BytesIO(facts.copies["screen"]))
    assert (facts.width_px, facts.height_px) == copy.size == (303, 384)
    upright = np.asarray(Image.fromarray(coins()).transpose(Image.Transpose.ROTATE_270), float)
    assert np.abs(np.asarray(copy.convert("L"), float) - upright).mean() < 3


def test_postscript_never_reaches_its_reader():
    """Measured: Pillow opens it and only then looks for a program to run it."""
    with pytest.raises(imaging.PictureRefused, match="PostScript"):
        imaging.examine(BytesIO(b"%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 9 9\n"), "plate.jpg")


def test_a_moving_png_and_a_gif_are_refused():
    frames = [Image.new("RGB", (40, 30), colour) for colour in ("red", "blue")]
    moving = encoded(frames[0], "PNG", save_all=True, append_images=frames[1:])

    with pytest.raises(imaging.PictureRefused, match="moving picture"):
        imaging.examine(BytesIO(moving), "a.png")
    with pytest.raises(imaging.PictureRefused, match="GIF"):
        imaging.examine(BytesIO(encoded(frames[0], "GIF")), "a.jpg")


def test_lines_of_one_bit_become_greys_when_they_shrink():
    stripes = Image.fromarray(np.tile(np.array([True, False]), (1800, 900)))

    copy = np.asarray(shown(encoded(stripes, "PNG"), "sheet.png", "thumbnail").convert("L"))

    assert 100 < copy.mean() < 156
