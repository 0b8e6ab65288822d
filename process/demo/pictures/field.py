"""A window on a piece, measured in millimetres, and the smooth arithmetic done on it. Pure."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray
from PIL import Image

Plane: TypeAlias = NDArray[np.float32]
Point: TypeAlias = tuple[float, float]


@dataclass(frozen=True)
class Field:
    """`width` × `height` pixels around a centre in mm; x to the right, y upwards."""

    width: int
    height: int
    px_per_mm: float
    centre: Point = (0.0, 0.0)

    @cached_property
    def x(self) -> Plane:
        return self._axis(self.width, self.centre[0], 1)[None, :].repeat(self.height, axis=0)

    @cached_property
    def y(self) -> Plane:
        return self._axis(self.height, self.centre[1], -1)[:, None].repeat(self.width, axis=1)

    @cached_property
    def r(self) -> Plane:
        return np.hypot(self.x, self.y)

    @cached_property
    def angle(self) -> Plane:
        return np.arctan2(self.y, self.x)

    def _axis(self, count: int, centre: float, sign: int) -> Plane:
        return (sign * (np.arange(count) - (count - 1) / 2) / self.px_per_mm + centre).astype(np.float32)

    def flat(self, value: float = 0.0) -> Plane:
        return np.full((self.height, self.width), value, dtype=np.float32)

    def to_px(self, points: Sequence[Point]) -> list[Point]:
        """Pixel coordinates (x right, y down) of points in mm."""
        left, top = (self.width - 1) / 2, (self.height - 1) / 2
        return [
            (left + (x - self.centre[0]) * self.px_per_mm, top - (y - self.centre[1]) * self.px_per_mm)
            for x, y in points
        ]

    def window(self, points: Sequence[Point], margin_mm: float) -> "tuple[Field, tuple[slice, slice]]":
        """The part of the field around the points, and where it lies in the whole."""
        margin = margin_mm * self.px_per_mm + 2
        xs, ys = zip(*self.to_px(points), strict=True)
        left, right = (int(min(max(v, 0), self.width)) for v in (min(xs) - margin, max(xs) + margin + 1))
        top, bottom = (int(min(max(v, 0), self.height)) for v in (min(ys) - margin, max(ys) + margin + 1))
        width, height = max(right - left, 1), max(bottom - top, 1)
        left, top = min(left, self.width - 1), min(top, self.height - 1)
        middle = (left + (width - 1) / 2, top + (height - 1) / 2)
        centre = (
            self.centre[0] + (middle[0] - (self.width - 1) / 2) / self.px_per_mm,
            self.centre[1] - (middle[1] - (self.height - 1) / 2) / self.px_per_mm,
        )
        where = (slice(top, top + height), slice(left, left + width))
        return Field(width, height, self.px_per_mm, centre), where


def smooth(values: Plane | float, low: float, high: float) -> Plane:
    """0 below `low`, 1 above `high`, an S between; runs downwards if `low` is the larger."""
    t = np.clip((np.asarray(values, dtype=np.float32) - low) / (high - low), 0, 1)
    return t * t * (3 - 2 * t)


def blur(plane: Plane, sigma_px: float) -> Plane:
    """A Gaussian blur; wide ones are done on a reduced plane."""
    if sigma_px < 0.3:
        return plane
    factor = max(1, int(sigma_px / 1.5))
    height, width = plane.shape
    factor = min(factor, max(1, min(height, width) // 4))
    small = plane if factor == 1 else np.asarray(Image.fromarray(plane).reduce(factor))
    small = _convolve(_convolve(small, sigma_px / factor).T, sigma_px / factor).T
    if factor == 1:
        return small
    box = (0, 0, width / factor, height / factor)
    image = Image.fromarray(np.ascontiguousarray(small)).resize((width, height), Image.Resampling.BICUBIC, box=box)
    return np.asarray(image)


def _convolve(plane: Plane, sigma: float) -> Plane:
    reach = max(1, int(np.ceil(2.6 * sigma)))
    weights = np.exp(-0.5 * (np.arange(reach + 1) / sigma) ** 2)
    weights /= weights[0] + 2 * weights[1:].sum()
    padded = np.pad(plane, ((reach, reach), (0, 0)), mode="edge")
    count = plane.shape[0]
    result = padded[reach : reach + count] * np.float32(weights[0])
    for step in range(1, reach + 1):
        pair = padded[reach - step : reach - step + count] + padded[reach + step : reach + step + count]
        result += np.float32(weights[step]) * pair
    return np.ascontiguousarray(result)


def shift(plane: Plane, down: int, right: int) -> Plane:
    """Move the plane; what comes in at the border repeats the border."""
    height, width = plane.shape
    down, right = max(-height, min(height, down)), max(-width, min(width, right))
    padded = np.pad(plane, ((max(down, 0), max(-down, 0)), (max(right, 0), max(-right, 0))), mode="edge")
    top, left = max(-down, 0), max(-right, 0)
    return padded[top : top + height, left : left + width]


def noise(field: Field, grain_mm: float, seed: int) -> Plane:
    """Smooth random values of about −1 to 1 whose spots are `grain_mm` wide, the same at every resolution."""
    cell_mm = grain_mm / 2  # finer than the spots, then blurred: no lattice shows
    step = field.px_per_mm * cell_mm
    columns, rows = int(field.width / step) + 8, int(field.height / step) + 8
    values = np.random.default_rng(seed).standard_normal((rows, columns), dtype=np.float32)
    values = _convolve(_convolve(values, 0.85).T, 0.85).T
    box = (3, 3, 3 + field.width / step, 3 + field.height / step)
    image = Image.fromarray(values).resize((field.width, field.height), Image.Resampling.BICUBIC, box=box)
    return np.asarray(image) * np.float32(1.75)
