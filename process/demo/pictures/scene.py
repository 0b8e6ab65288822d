"""The table under the lamp: paper, the shadow a piece throws, and the way from light to a printed tone.

Pure.
"""

from dataclasses import dataclass
from functools import cache, cached_property

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from process.demo.pictures.field import Field, Plane, Point, blur, noise, shift

Light = NDArray[np.float32]
STEPS = 16_384
BRIGHTEST = 3.0
PAPER = (0.335, 0.335, 0.325)


@dataclass(frozen=True)
class Frame:
    """A picture of 4 : 3 whose upper part shows `extent_mm` of the piece, scale and card standing below."""

    size_px: int
    extent_mm: float
    centre: Point = (0.0, 0.0)
    close: bool = False
    unit_mm: float = 1.0  # a large piece is modelled in larger units, so that light treats it alike

    @property
    def width(self) -> int:
        return self.size_px

    @property
    def height(self) -> int:
        return self.size_px * 3 // 4

    @property
    def side_px(self) -> int:
        """The square that `extent_mm` fills."""
        return round(self.height * 0.80)

    @property
    def px_per_mm(self) -> float:
        return self.side_px / self.extent_mm

    @property
    def corner(self) -> tuple[int, int]:
        """Where the modelled part begins; a close view fills the whole picture."""
        return (0, 0) if self.close else ((self.width - self.side_px) // 2, round(self.height * 0.022))

    @cached_property
    def piece(self) -> Field:
        px_per_unit = self.px_per_mm * self.unit_mm
        x, y = self.centre[0] / self.unit_mm, self.centre[1] / self.unit_mm
        if self.close:
            return Field(self.width, self.height, px_per_unit, (x, y - 0.078 * self.height / px_per_unit))
        return Field(self.side_px, self.side_px, px_per_unit, (x, y))

    def place_px(self, x_mm: float, y_mm: float) -> tuple[float, float]:
        """Where a place on the piece (mm from its centre) stands in the picture."""
        ((x, y),) = self.piece.to_px([(x_mm / self.unit_mm, y_mm / self.unit_mm)])
        return x + self.corner[0], y + self.corner[1]


def paper(frame: Frame, seed: int = 5) -> Light:
    """Grey paper, brighter towards the lamp, with a grain that is hardly seen."""
    field = Field(frame.width, frame.height, frame.width / 100)
    fall = 1.08 - 0.0042 * (field.x - field.y) - 0.00005 * field.r**2
    grain = 1 + 0.012 * noise(field, 0.35, seed) + 0.012 * noise(field, 6, seed + 1)
    return (fall * grain)[..., None] * np.asarray(PAPER, dtype=np.float32)


def lay(ground: Light, frame: Frame, lit: Light, mask: Plane, thickness_mm: float) -> Light:
    """Set the lit piece on the ground with its shadows: a close dark line and a long soft one."""
    left, top = frame.corner
    here = (slice(top, top + mask.shape[0]), slice(left, left + mask.shape[1]))
    whole = np.zeros(ground.shape[:2], dtype=np.float32)
    whole[here] = mask
    ground *= _thrown(whole, thickness_mm * frame.px_per_mm * frame.unit_mm)[..., None]
    view = ground[here]
    view += (lit - view) * mask[..., None]
    return ground


def _thrown(whole: Plane, step_px: float) -> Plane:
    """How much light the ground keeps around a piece `step_px` thick; worked out at half size."""
    half = np.asarray(Image.fromarray(whole).reduce(2))
    step = step_px / 2
    dark = np.ones_like(half)
    for share, spread, depth in ((0.25, 0.18, 0.45), (0.75, 0.5, 0.42), (1.3, 1.1, 0.30), (0.2, 2.6, 0.22)):
        far = round(step * share)
        shifted = shift(half, round(far * 0.8), far)
        dark *= 1 - np.float32(depth) * blur(shifted, max(1.0, spread * step))
    full = Image.fromarray(dark).resize((whole.shape[1], whole.shape[0]), Image.Resampling.BILINEAR)
    return np.asarray(full)


def develop(light: Light, *, exposure: float = 1.0, seed: int = 9, vignette: float = 0.22) -> Image.Image:
    """Linear light to sRGB: a gentle shoulder, the lens's fall of light, a trace of sensor noise."""
    height, width = light.shape[:2]
    y = np.linspace(-1, 1, height, dtype=np.float32)[:, None]
    x = np.linspace(-1, 1, width, dtype=np.float32)[None, :]
    squared = 0.5 * (x * x + y * y)
    fall = np.float32(exposure) * (1 - np.float32(vignette) * squared * np.sqrt(squared))
    index = np.clip(light * fall[..., None] * np.float32(STEPS / BRIGHTEST), 0, STEPS - 1).astype(np.uint16)
    coded = _curve()[index]
    chance = np.random.default_rng(seed).standard_normal((height, width), dtype=np.float32)
    coded += (1.3 * chance)[..., None]
    return Image.fromarray(np.clip(coded, 0, 255).astype(np.uint8))


@cache
def _curve() -> Plane:
    """From linear light to the sRGB code (IEC 61966-2-1) through a photographic shoulder, as a table."""
    value = np.arange(STEPS) * (BRIGHTEST / STEPS)
    value = np.clip(value * (1 + value / 6.0) / (1 + 0.62 * value), 0, 1)
    value = 0.72 * value + 0.28 * value**1.6  # a little more contrast in the darks
    coded = np.where(value <= 0.0031308, 12.92 * value, 1.055 * value ** (1 / 2.4) - 0.055)
    return (coded * 255 + 0.5).astype(np.float32)
