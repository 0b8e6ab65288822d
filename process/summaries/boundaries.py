"""How deep in each wall the boundary of an interruption lies, counted from the contact face."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from pint import Quantity

from process.chemistry.deposit import interface_depth
from process.models import Shell
from process.summaries.figures import figure
from process.summaries.segments import Rail
from process.summaries.stretches import Stretch
from records.figures import Figure
from records.units import show, ureg


@dataclass(frozen=True)
class Wall:
    """What grew on one cathode: its mean over the whole area, and over the trimmed face where that is known."""

    index_count: int
    label: str
    mean: Quantity
    face: Quantity | None
    shell: Shell | None


@dataclass(frozen=True)
class Boundary:
    wall: Wall
    depth: Figure
    at_face: Figure | None = None


def boundaries_at(stretch: Stretch, rail: Rail, walls: Sequence[Wall]) -> tuple[Boundary, ...]:
    """One boundary in each wall that hung there then and grew on afterwards."""
    found = (_boundary(wall, stretch, rail) for wall in walls)
    return tuple(each for each in found if each)


def _boundary(wall: Wall, stretch: Stretch, rail: Rail) -> Boundary | None:
    least, before, total = (
        rail.passed_ah(wall.index_count, at) for at in (stretch.began_after, stretch.began_by, rail.sheet.until_at)
    )
    if total <= 0 or not 0 < before < total:
        return None
    charges = {"charge_before": ureg.Quantity(before, "A*h"), "charge_total": ureg.Quantity(total, "A*h")}
    depth = figure(f"Interface in {wall.label}", "_mm", interface_depth, thickness=wall.mean, **charges)
    if least < before and depth.value is not None:
        low = depth.value * least / before
        note = f"between {show(low, '_mm')} and {show(depth.value, '_mm')}: the instant is not known"
        depth = replace(depth, note=note)
    if wall.face is None:
        return Boundary(wall, depth)
    face = figure("Scaled to the trimmed face", "_mm", interface_depth, thickness=wall.face, **charges)
    return Boundary(wall, depth, face)
