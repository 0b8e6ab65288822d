"""The medal of 1624 in all its states: original, shells, copies, moulds, each side. Pure."""

from collections.abc import Callable

from process.demo.pictures import blank, letters, mill, portrait
from process.demo.pictures.field import Field, Plane
from process.demo.pictures.relief import Relief, circle

DIAMETER_MM = 58.40
OBVERSE_LEGEND = "MAUD·FERRIGAN·MISTRESS·OF·THE·TIDE·MILL·1624"
REVERSE_LEGEND = "WHAT·THE·SEA·LENDS·I·GRIND"
MARK = "OVM 2026 COPY"
MARK_RADIUS_MM = 25.3
MARK_CAPITAL_MM = 2.0
LEGEND_RADIUS_MM = 24.75


def obverse(field: Field, radius: Plane) -> Relief:
    """The portrait with its legend, before wear."""
    relief = Relief(field)
    blank.rim(relief, radius, 1.5, 0.85)
    _border(relief)
    legend = letters.around(
        field, OBVERSE_LEGEND, radius_mm=LEGEND_RADIUS_MM, capital_mm=2.75, middle_h=12, spread_deg=292
    )
    relief.height += letters.raised(field, legend, 0.5)
    portrait.model(relief)
    return relief


def reverse(field: Field, radius: Plane, mark: str = "") -> Relief:
    """The tide-mill; a copy carries its mark along the lower rim."""
    relief = Relief(field)
    blank.rim(relief, radius, 1.5, 0.85)
    _border(relief)
    legend = letters.around(
        field, REVERSE_LEGEND, radius_mm=LEGEND_RADIUS_MM, capital_mm=2.75, middle_h=12, spread_deg=214
    )
    relief.height += letters.raised(field, legend, 0.5)
    mill.model(relief)
    if mark:
        text = letters.around(
            field, mark, radius_mm=MARK_RADIUS_MM, capital_mm=MARK_CAPITAL_MM, middle_h=6, style="sans", feet_out=True
        )
        relief.height += letters.raised(field, text, 0.34, 0.05)
    return relief


def _border(relief: Relief) -> None:
    ring = [(x, y) for x, y in circle((0, 0), 27.15, count=128)[:-1]]
    relief.beads(ring, 0.42, 0.3)


SIDES: dict[str, Callable[..., Relief]] = {"obverse": obverse, "reverse": reverse}
