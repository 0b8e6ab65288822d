"""Real photographs with known content, in every format that is taken: scikit-image brings them along."""

from collections.abc import Callable
from io import BytesIO
from typing import Any

import numpy as np
import pillow_heif
import skimage.data
import tifffile
from numpy.typing import NDArray
from PIL import Image


def coins() -> NDArray[np.uint8]:
    """Twenty-four old coins on a dark ground, grey, 384 × 303 (scikit-image, data/README.txt)."""
    return skimage.data.coins()


def encoded(image: Image.Image, kind: str = "JPEG", **options: Any) -> bytes:
    buffer = BytesIO()
    image.save(buffer, kind, **options)
    return buffer.getvalue()


def heic(image: Image.Image, **options: Any) -> bytes:
    buffer = BytesIO()
    pillow_heif.from_pillow(image).save(buffer, quality=90, **options)
    return buffer.getvalue()


def tiff(values: NDArray[Any], **options: Any) -> bytes:
    """By another writer than the reader under test."""
    buffer = BytesIO()
    tifffile.imwrite(buffer, values, **options)
    return buffer.getvalue()


def _sixteen(values: NDArray[np.uint8]) -> NDArray[np.uint16]:
    return values.astype(np.uint16) * 257


def _rgb(values: NDArray[Any]) -> NDArray[Any]:
    return np.repeat(values[..., None], 3, axis=2)


# File name → the coins in that format.
COINS: dict[str, Callable[[], bytes]] = {
    "coins.jpg": lambda: encoded(Image.fromarray(coins()), quality=95),
    "coins.png": lambda: encoded(Image.fromarray(coins()), "PNG"),
    "coins.webp": lambda: encoded(Image.fromarray(_rgb(coins())), "WEBP", quality=95),
    "coins.heic": lambda: heic(Image.fromarray(_rgb(coins()))),
    "coins-grey-8.tif": lambda: tiff(coins()),
    "coins-grey-16.tif": lambda: tiff(_sixteen(coins())),
    "coins-colour-8.tif": lambda: tiff(_rgb(coins()), photometric="rgb"),
    "coins-colour-16.tif": lambda: tiff(_rgb(_sixteen(coins())), photometric="rgb"),
    "coins-packed-16.tiff": lambda: tiff(_rgb(_sixteen(coins())), photometric="rgb", compression="zlib"),
    "coins-float.tif": lambda: tiff(coins().astype(np.float32)),
}
