"""Pictures of our own for the specimens: a shaded disc that stands for a medal."""

from functools import cache
from io import BytesIO

import numpy as np
from PIL import Image


@cache
def medal(size: int = 900, colour: tuple[int, int, int] = (176, 112, 68)) -> bytes:
    """A relief lit from the upper left, as JPEG."""
    y, x = np.mgrid[-1 : 1 : size * 1j, -1 : 1 : size * 1j]
    r = np.hypot(x, y)
    relief = 0.10 * np.exp(-((r - 0.86) ** 2) / 0.002) + 0.35 * np.exp(-((x + 0.05) ** 2 * 5 + (y + 0.1) ** 2 * 3))
    relief += 0.03 * np.cos(14 * np.arctan2(y, x)) * np.exp(-((r - 0.72) ** 2) / 0.003)
    slope_y, slope_x = np.gradient(relief, 2 / size)
    light = np.clip(0.62 - 0.55 * (slope_x + slope_y), 0.05, 1.0)[..., None]
    disc = np.where(r[..., None] < 0.95, light * np.array(colour) * 1.25, np.array((228, 224, 216)))
    out = BytesIO()
    Image.fromarray(np.clip(disc, 0, 255).astype("uint8")).save(out, "JPEG", quality=90)
    return out.getvalue()
