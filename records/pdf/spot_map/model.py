"""What a map of points shows, without a word on how it is drawn."""

from dataclasses import dataclass
from typing import Literal

Ground = Literal["photo", "disc", "oval", "plate"]
RATIOS: dict[str, float] = {"disc": 1.0, "oval": 1.3, "plate": 0.7}  # height over width of the plain outlines


@dataclass(frozen=True)
class Spot:
    """A measured value at a place, in shares of width and height from the upper left. Shapes: dot, ring, square."""

    x: float
    y: float
    value: str
    name: str
    is_least: bool = False
    is_below: bool = False


@dataclass(frozen=True)
class Chip:
    """A line under the picture: what a sign means, or a figure that belongs to no place."""

    kind: Literal["measured", "calculated", "estimated", "below"]
    words: str


@dataclass(frozen=True)
class SpotMap:
    """`href` is where a page fetches the photograph; a paper is handed the picture itself."""

    title: str
    description: str
    spots: tuple[Spot, ...]
    chips: tuple[Chip, ...] = ()
    ground: Ground = "photo"
    ratio: float = 1.0
    href: str = ""
