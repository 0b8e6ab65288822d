"""Where each dot, label and line stands; labels move aside so that none covers another."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from records.pdf.spot_map.model import Chip, Spot, SpotMap

DOT = 0.42  # of the text size
LINE = 1.55  # height of a label, of the text size
GAP = 0.5
LEADING = 1.3

Box = tuple[float, float, float, float]  # left, top, right, bottom


@dataclass(frozen=True)
class Label:
    """The text of a spot in its box, and the line that leads to its dot where it had to move away."""

    spot: Spot
    at: tuple[float, float]
    text: str
    box: Box
    leader: tuple[tuple[float, float], tuple[float, float]] | None


@dataclass(frozen=True)
class ChipPlace:
    chip: Chip
    sign: Box
    text_at: tuple[float, float]  # of the first line; each further one stands a line below
    lines: tuple[str, ...]


@dataclass(frozen=True)
class Layout:
    width: float
    height: float
    picture_height: float
    size: float
    labels: tuple[Label, ...]
    chips: tuple[ChipPlace, ...]


def lay_out(shown: SpotMap, width: float, size: float, measure: Callable[[str], float], *, named: bool) -> Layout:
    """`measure` gives the width of a text; `named` puts the place beside the value. Lengths grow down from the top."""
    tall = width * shown.ratio
    dots = [(spot.x * width, spot.y * tall) for spot in shown.spots]
    taken: list[Box] = [_around(at, size * DOT * 1.6) for at in dots]
    labels: list[Label] = []
    for spot, at in zip(shown.spots, dots, strict=True):
        text = f"{spot.name} {spot.value}" if named and spot.name else spot.value
        text = f"■ {text}" if spot.is_below else text
        box = _free_box(at, measure(text) + size * 0.7, size * LINE, (width, tall), taken, size)
        taken.append(box)
        labels.append(Label(spot, at, text, box, _leader(at, box, size)))
    chips, foot = [], tall + (size * 0.7 if shown.chips else 0)
    for chip in shown.chips:
        lines = _wrapped(chip.words, width - size * 2.1, measure)
        chips.append(ChipPlace(chip, (0.0, foot, size * 1.5, foot + size), (size * 2.1, foot + size * 0.86), lines))
        foot += size * (LEADING * len(lines) + 0.4)
    return Layout(width, foot, tall, size, tuple(labels), tuple(chips))


def _wrapped(words: str, room: float, measure: Callable[[str], float]) -> tuple[str, ...]:
    """The text in as many lines as the width needs."""
    lines = [""]
    for word in words.split(" "):
        longer = f"{lines[-1]} {word}".strip()
        if lines[-1] and measure(longer) > room:
            lines.append(word)
        else:
            lines[-1] = longer
    return tuple(lines)


def _around(at: tuple[float, float], half: float) -> Box:
    return at[0] - half, at[1] - half, at[0] + half, at[1] + half


def _free_box(
    at: tuple[float, float], wide: float, high: float, room: tuple[float, float], taken: list[Box], size: float
) -> Box:
    """The nearest place beside the dot that covers nothing; where there is none, the one that covers least."""
    candidates = [_inside(box, room) for box in _beside(at, wide, high, size)]
    return min(candidates, key=lambda box: sum(_overlap(box, other) for other in taken))


def _beside(at: tuple[float, float], wide: float, high: float, size: float) -> Iterator[Box]:
    """Right, left, above, below, then farther off in every direction."""
    x, y = at
    for step in range(6):
        off = size * (GAP + DOT) + step * high * 0.8
        for left, top in (
            (x + off, y - high / 2), (x - off - wide, y - high / 2), (x - wide / 2, y - off - high),
            (x - wide / 2, y + off), (x + off, y - off - high), (x + off, y + off), (x - off - wide, y - off - high),
            (x - off - wide, y + off),
        ):  # fmt: skip
            yield left, top, left + wide, top + high


def _inside(box: Box, room: tuple[float, float]) -> Box:
    left = min(max(box[0], 0.0), max(room[0] - (box[2] - box[0]), 0.0))
    top = min(max(box[1], 0.0), max(room[1] - (box[3] - box[1]), 0.0))
    return left, top, left + box[2] - box[0], top + box[3] - box[1]


def _overlap(one: Box, other: Box) -> float:
    return max(0.0, min(one[2], other[2]) - max(one[0], other[0])) * max(
        0.0, min(one[3], other[3]) - max(one[1], other[1])
    )


def _leader(at: tuple[float, float], box: Box, size: float) -> tuple[tuple[float, float], tuple[float, float]] | None:
    """From the dot to the nearest edge of its label, where they stand apart."""
    near = min(max(at[0], box[0]), box[2]), min(max(at[1], box[1]), box[3])
    far = ((near[0] - at[0]) ** 2 + (near[1] - at[1]) ** 2) ** 0.5
    return (at, near) if far > size * (GAP + DOT) * 1.2 else None
