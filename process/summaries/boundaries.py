"""How deep in each wall the boundary of an interruption lies, counted from the contact face."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from pint import Quantity

from process.chemistry.deposit import interface_depth
from process.models import Shell
from process.summaries.figures import apart, figure
from process.summaries.segments import Rail
from process.summaries.stretches import Stretch
from records.figures import Figure
from records.units import show, ureg

BY_TRACE = "by the charge of the trace, which was chosen for this run"


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


def boundaries_at(
    stretch: Stretch, rail: Rail, walls: Sequence[Wall], traced_ah: float | None = None
) -> tuple[Boundary, ...]:
    """One boundary in each wall that hung there then and grew on afterwards.

    By the traces where they were chosen for the charge (`traced_ah`) and saw it; what each piece of a rail that
    changed had of the charge, only the sheet can tell.
    """
    if stretch.logged is not None and traced_ah and not rail.changed:
        before, total = stretch.logged, ureg.Quantity(traced_ah, "A*h")
        found = (_boundary(wall, before, total, BY_TRACE) for wall in walls)
    else:
        found = (_by_sheet(wall, stretch, rail) for wall in walls)
    return tuple(each for each in found if each)


def _by_sheet(wall: Wall, stretch: Stretch, rail: Rail) -> Boundary | None:
    least, before, total = (
        rail.passed_ah(wall.index_count, at) for at in (stretch.began_after, stretch.began_by, rail.sheet.until_at)
    )
    found = _boundary(wall, ureg.Quantity(before, "A*h"), ureg.Quantity(total, "A*h"))
    if found is None or least >= before or found.depth.value is None:
        return found
    low = found.depth.value * least / before
    note = f"between {show(low, '_mm')} and {show(found.depth.value, '_mm')}: the instant is not known"
    return replace(found, depth=replace(found.depth, note=note))


def _boundary(wall: Wall, before: Quantity, total: Quantity, note: str = "") -> Boundary | None:
    if not 0 < apart(before.m)[0] < apart(total.m)[0]:
        return None
    charges = {"charge_before": before, "charge_total": total}
    depth = figure(f"Interface in {wall.label}", "_mm", interface_depth, thickness=wall.mean, **charges)
    depth = replace(depth, note=depth.note or note)
    if wall.face is None:
        return Boundary(wall, depth)
    return Boundary(
        wall, depth, figure("Scaled to the trimmed face", "_mm", interface_depth, thickness=wall.face, **charges)
    )
