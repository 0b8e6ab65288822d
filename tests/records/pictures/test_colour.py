"""Colours of small copies: by the profile that came along, against LittleCMS at full size and against formulas."""

from io import BytesIO

import numpy as np
import pytest
import skimage.data
from PIL import Image, ImageCms

from records import imaging
from tests.records.pictures import profiles
from tests.records.pictures.samples import encoded

# XYZ of D65 from linear Adobe RGB (1998), section 4.3.5.3; linear sRGB from XYZ, IEC 61966-2-1.
XYZ_FROM_ADOBE = np.array(
    [[0.57667, 0.18556, 0.18823], [0.29734, 0.62736, 0.07529], [0.02703, 0.07069, 0.99134]]
)  # fmt: skip
SRGB_FROM_XYZ = np.array([[3.2406, -1.5372, -0.4986], [-0.9689, 1.8758, 0.0415], [0.0557, -0.2040, 1.0570]])


def copied(content: bytes, name: str) -> np.ndarray:
    facts = imaging.examine(BytesIO(content), name)
    return np.asarray(Image.open(BytesIO(facts.copies["screen"])), float)


def by_littlecms(image: Image.Image, profile: bytes) -> np.ndarray:
    """The whole picture, not shrunk, by the library itself."""
    ends = ImageCms.ImageCmsProfile(BytesIO(profile)), ImageCms.createProfile("sRGB")
    return np.asarray(ImageCms.profileToProfile(image, *ends, outputMode="RGB"), float)


def srgb_of_adobe(coded: tuple[int, int, int]) -> np.ndarray:
    linear = SRGB_FROM_XYZ @ XYZ_FROM_ADOBE @ (np.array(coded) / 255) ** (563 / 256)
    linear = np.clip(linear, 0, 1)
    return 255 * np.where(linear <= 0.0031308, 12.92 * linear, 1.055 * linear ** (1 / 2.4) - 0.055)


@pytest.mark.parametrize("colour", [(200, 120, 60), (90, 140, 110), (128, 128, 128), (240, 235, 220), (60, 200, 90)])
def test_adobe_rgb_by_its_published_formulas(colour):
    patch = encoded(Image.new("RGB", (64, 64), colour), "PNG", icc_profile=profiles.adobe_rgb())

    shown = copied(patch, "patch.png").mean(axis=(0, 1))

    assert np.abs(shown - srgb_of_adobe(colour)).max() < 2.5


@pytest.mark.parametrize("kind", ["PNG", "JPEG", "TIFF"])
def test_adobe_rgb_of_a_real_photograph_is_what_littlecms_makes_of_it(kind):
    image = Image.fromarray(skimage.data.chelsea())
    options = {"quality": 97, "subsampling": 0} if kind == "JPEG" else {}

    shown = copied(encoded(image, kind, icc_profile=profiles.adobe_rgb(), **options), f"cat.{kind.lower()}")

    right = by_littlecms(image, profiles.adobe_rgb())
    assert np.abs(shown - right).mean() < 3 < np.abs(np.asarray(image, float) - right).mean()


@pytest.mark.parametrize("kind", ["JPEG", "TIFF"])
def test_four_inks_with_a_profile_are_what_littlecms_makes_of_them(kind):
    image = Image.fromarray(skimage.data.coffee()).convert("CMYK")

    shown = copied(encoded(image, kind, icc_profile=profiles.cmyk()), f"coffee.{kind.lower()}")

    right = by_littlecms(image, profiles.cmyk())
    plain = np.asarray(image.convert("RGB"), float)
    assert np.abs(shown - right).mean() < 4 < np.abs(plain - right).mean()


def test_cie_lab_needs_no_profile():
    lab = ImageCms.profileToProfile(
        Image.fromarray(skimage.data.chelsea()), ImageCms.createProfile("sRGB"), ImageCms.createProfile("LAB"),
        outputMode="LAB",
    )  # fmt: skip

    shown = copied(encoded(lab, "TIFF"), "cat.tif")

    assert np.abs(shown - skimage.data.chelsea()).mean() < 4


def test_a_copy_says_nothing_of_profile_camera_or_place():
    image = Image.fromarray(skimage.data.chelsea())
    exif = Image.Exif()
    exif[0x0110] = "Bench camera"
    exif.get_ifd(0x8825)[1] = "N"
    content = encoded(image, exif=exif, icc_profile=profiles.adobe_rgb(), comment=b"where it was taken", xmp=b"<x/>")

    for copy in imaging.examine(BytesIO(content), "cat.jpg").copies.values():
        assert set(Image.open(BytesIO(copy)).info) <= {
            "jfif",
            "jfif_version",
            "jfif_unit",
            "jfif_density",
            "progressive",
            "progression",
        }
