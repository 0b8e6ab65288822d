"""The disc under every medal and coin: outline, rim, border, and what years did to it. Pure."""

import numpy as np

from process.demo.pictures.field import Field, Plane, noise, smooth
from process.demo.pictures.relief import Relief, clock

EDGE_KNOCK_H = 4  # the knock on the Ferrigan medal stands at 4 o'clock
EDGE_KNOCK_MM = 1.5


def outline_mm(field: Field, diameter_mm: float, unevenness_mm: float, seed: int) -> Plane:
    """The radius of the piece in each direction: never quite a circle."""
    chance = np.random.default_rng(seed)
    radius = field.flat(diameter_mm / 2)
    for wave in (2, 3, 5, 8):
        shift = chance.uniform(0, 2 * np.pi)
        radius -= np.float32(unevenness_mm / wave) * (1 + np.cos(wave * field.angle + shift)) / 2
    return radius


def rim(relief: Relief, radius: Plane, width_mm: float, height_mm: float) -> None:
    """A moulded border inside the edge, and a shallow dish between it and the middle."""
    inside = radius - relief.field.r
    relief.height += height_mm * smooth(inside, width_mm + 0.35, width_mm - 0.25)
    relief.height += 0.25 * smooth(relief.field.r, 0, float(radius.max())) ** 2
    hollow = np.exp(-(((inside - width_mm - 0.55) / 0.3) ** 2))
    relief.height -= 0.08 * hollow.astype(np.float32)


def edge_fall(relief: Relief, radius: Plane, thickness_mm: float, round_mm: float = 0.55) -> Plane:
    """Round the edge down to the paper; return the mask of the piece."""
    inside = radius - relief.field.r
    share = np.clip(inside / round_mm, 0, 1)
    curve = np.sqrt(np.clip(1 - (1 - share) ** 2, 0, 1)).astype(np.float32)
    relief.height -= (1 - curve) * np.float32(min(thickness_mm, 1.1))
    half_px = 0.6 / relief.field.px_per_mm
    return smooth(inside, -half_px, half_px)


def knock(relief: Relief, radius: Plane, hour: float = EDGE_KNOCK_H, size_mm: float = EDGE_KNOCK_MM) -> None:
    """A blow on the edge: metal pressed in and thrown up beside it; the outline gives way too."""
    x, y = clock(hour, float(radius.max()))
    far = np.hypot(relief.field.x - x, relief.field.y - y)
    radius -= np.float32(0.55) * smooth(far, size_mm, 0.1)
    relief.bump((x * 0.975, y * 0.975), (size_mm * 0.62, size_mm * 0.5), -0.75, 35)
    relief.bump((x * 0.935, y * 0.935), (0.7, 0.4), 0.2, 60)


def skin(relief: Relief, grain_mm: float, depth_mm: float, seed: int) -> None:
    """The fine unevenness of a cast or grown surface."""
    relief.height += np.float32(depth_mm) * noise(relief.field, grain_mm, seed)
    relief.height += np.float32(depth_mm * 1.6) * noise(relief.field, grain_mm * 5, seed + 1)


def pits(relief: Relief, count: int, seed: int, radius_mm: float) -> None:
    """Small casting holes and scratches, scattered."""
    chance = np.random.default_rng(seed)
    for _ in range(count):
        at = clock(chance.uniform(0, 12), radius_mm * np.sqrt(chance.uniform(0, 1)))
        relief.bump(at, (chance.uniform(0.06, 0.16),) * 2, -chance.uniform(0.05, 0.16))
    for _ in range(count // 4):
        x, y = clock(chance.uniform(0, 12), radius_mm * chance.uniform(0.2, 0.95))
        a, length = chance.uniform(0, np.pi), chance.uniform(1, 4)
        relief.line([(x, y), (x + length * np.cos(a), y + length * np.sin(a))], 0.09, -0.04)
