"""Light on relief: one raking lamp, a pale room, shadows and the sheen of the material. Pure."""

from dataclasses import dataclass
from math import cos, radians, sin, tan

import numpy as np
from numpy.typing import NDArray

from process.demo.pictures.field import Field, Plane, blur, noise, shift, smooth

Colour = tuple[float, float, float]  # linear light, 0 to 1


@dataclass(frozen=True, kw_only=True)
class Material:
    """How a surface takes light; colours are linear, for recess, plain surface and worn height."""

    recess: Colour
    body: Colour
    worn: Colour
    wear: float = 0.6
    sheen: float = 0.3  # strength of the mirror-like part
    polish: float = 24.0  # its sharpness
    metal: float = 1.0  # 1: the sheen has the colour of the body
    through: float = 0.0  # light that wanders through (silicone)
    mottle: float = 0.12
    stain: Colour | None = None


@dataclass(frozen=True)
class Lamp:
    azimuth_deg: float = 128.0
    elevation_deg: float = 34.0
    strength: float = 2.5
    room: float = 0.5

    @property
    def direction(self) -> Colour:
        a, e = radians(self.azimuth_deg), radians(self.elevation_deg)
        return cos(a) * cos(e), sin(a) * cos(e), sin(e)


def shade(field: Field, height: Plane, material: Material, lamp: Lamp, seed: int = 1) -> NDArray[np.float32]:
    """Linear RGB of the lit surface."""
    height_px = height * np.float32(field.px_per_mm)
    if material.through:
        height_px = (1 - material.through) * height_px + material.through * blur(height_px, 0.8 * field.px_per_mm)
    normal = _normals(height_px + _bow(field, material))
    open_sky = _open_sky(field, height)
    lit = shadow(height_px, lamp, field.px_per_mm)
    if material.through:
        lit = 0.35 + 0.65 * blur(lit, 0.7 * field.px_per_mm)
    facing = np.clip(_dot(normal, lamp.direction), 0, 1)
    room = np.float32(lamp.room) * open_sky * (0.62 + 0.38 * normal[1] + 0.25 * (normal[2] - 0.8))
    colour = _albedo(field, height, open_sky, material, seed)
    diffuse = room + np.float32(lamp.strength) * facing * lit
    sheen = _sheen(normal, lamp, material, open_sky, lit)
    tint = np.asarray(material.worn, dtype=np.float32) * material.metal + (1 - material.metal)
    return colour * diffuse[..., None] + sheen[..., None] * tint


def _bow(field: Field, material: Material) -> Plane:
    """The lamp is near, so a flat field is not lit evenly; bending it a little says the same."""
    reach_mm = 0.5 * field.width / field.px_per_mm
    squared = (field.x - field.centre[0]) ** 2 + (field.y - field.centre[1]) ** 2
    return np.float32(-0.13 * material.metal * field.px_per_mm / (2 * reach_mm)) * squared


def _normals(height_px: Plane) -> tuple[Plane, Plane, Plane]:
    down, right = np.gradient(height_px)
    length = np.sqrt(right**2 + down**2 + 1)
    return -right / length, down / length, 1 / length


def _dot(normal: tuple[Plane, Plane, Plane], direction: Colour) -> Plane:
    return sum(n * np.float32(d) for n, d in zip(normal, direction, strict=True))


def _open_sky(field: Field, height: Plane) -> Plane:
    """How much of the room a point sees: less in the recesses (a blur against the height itself)."""
    open_sky = np.ones_like(height)
    for sigma_mm, weight in ((0.25, 0.55), (0.8, 0.45), (2.4, 0.35)):
        below = (blur(height, sigma_mm * field.px_per_mm) - height) / np.float32(sigma_mm)
        open_sky -= np.float32(weight) * np.clip(below, -0.25, 1.2)
    return np.clip(open_sky, 0.12, 1.25)


def shadow(height_px: Plane, lamp: Lamp, px_per_mm: float) -> Plane:
    """1 in the light, 0 where higher relief stands before the lamp; softer with distance."""
    a = radians(lamp.azimuth_deg)
    rise = tan(radians(lamp.elevation_deg))
    lit = np.ones_like(height_px)
    for share in (0.08, 0.16, 0.27, 0.4, 0.56, 0.76, 1.0, 1.35, 1.8, 2.4, 3.2, 4.2):
        far = share * px_per_mm
        dx, dy = round(cos(a) * far), round(-sin(a) * far)
        if (dx, dy) == (0, 0):
            continue
        above = shift(height_px, -dy, -dx) - height_px - np.float32(np.hypot(dx, dy) * rise)
        soft = 0.12 * px_per_mm + 0.22 * far
        lit = np.minimum(lit, 1 - smooth(above, -0.35 * soft, soft))
    return lit


def _albedo(field: Field, height: Plane, open_sky: Plane, material: Material, seed: int) -> NDArray[np.float32]:
    recess, body, worn = (np.asarray(c, dtype=np.float32) for c in (material.recess, material.body, material.worn))
    patchy = noise(field, 4.5, seed + 20) + 0.6 * noise(field, 1.4, seed + 21) + 0.35 * noise(field, 0.35, seed + 22)
    crest = height - blur(height, 1.6 * field.px_per_mm)
    rubbed = smooth(crest + 0.05 * patchy, 0.10, 0.55) * np.float32(material.wear)
    deep = smooth(open_sky + 0.06 * patchy, 0.85, 0.4)
    colour = body + (worn - body) * rubbed[..., None]
    colour += (recess - colour) * deep[..., None]
    if material.stain is not None:
        spots = smooth(noise(field, 2.6, seed + 30) + 0.5 * noise(field, 0.6, seed + 31) + 0.4 * deep, 0.55, 1.25)
        colour += (np.asarray(material.stain, dtype=np.float32) - colour) * (0.5 * spots)[..., None]
    return colour * (1 + np.float32(material.mottle) * np.clip(patchy, -2, 2))[..., None]


def _sheen(normal: tuple[Plane, Plane, Plane], lamp: Lamp, material: Material, open_sky: Plane, lit: Plane) -> Plane:
    """The lamp's broad and narrow gleam, and the room seen in the metal."""
    lx, ly, lz = lamp.direction
    length = np.sqrt(lx**2 + ly**2 + (lz + 1) ** 2)
    half = _dot(normal, (lx / length, ly / length, (lz + 1) / length))
    half = np.clip(half, 0, 1)
    gleam = (0.36 * half ** (material.polish * 0.35) + 1.5 * half ** (1.3 * material.polish)) * (0.15 + 0.85 * lit)
    nx, ny, nz = normal
    mirror_x, mirror_y = 2 * nz * nx, 2 * nz * ny  # where the eye's ray goes after the metal
    window = smooth(0.55 * mirror_y - 0.75 * mirror_x, -0.10, 0.62) * 0.95
    floor = 0.35 * smooth(0.4 * mirror_x - 0.9 * mirror_y, 0.45, 1.0)
    return np.float32(material.sheen) * (gleam + (window + floor) * np.clip(open_sky, 0, 1))
