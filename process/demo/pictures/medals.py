"""The medal of 1624: its two sides as modelled, with the mark that only a copy carries. Pure."""

from process.demo.pictures import blank, letters, mill, portrait
from process.demo.pictures.field import Field, Plane
from process.demo.pictures.relief import Relief, circle

DIAMETER_MM = 58.40
THICKNESS_MM = 3.03
OBVERSE_LEGEND = "MAUD·FERRIGAN·MISTRESS·OF·THE·TIDE·MILL·1624"
REVERSE_LEGEND = "WHAT·THE·SEA·LENDS·I·GRIND"
LEGEND_RADIUS_MM = 24.85
MARK = "OVM 2026 COPY"
MARK_RADIUS_MM = 24.75
MARK_CAPITAL_MM = 2.0


def obverse(field: Field, radius: Plane) -> Relief:
    """The portrait with its legend."""
    relief = _ground(field, radius, OBVERSE_LEGEND, 276)
    portrait.model(relief)
    return relief


def reverse(field: Field, radius: Plane) -> Relief:
    """The tide-mill with its motto."""
    relief = _ground(field, radius, REVERSE_LEGEND, 214)
    mill.model(relief)
    return relief


def marked_reverse(field: Field, radius: Plane) -> Relief:
    """The reverse as a copy has it: the mark along the lower rim, grown with the deposit."""
    relief = reverse(field, radius)
    text = letters.around(
        field,
        MARK,
        radius_mm=MARK_RADIUS_MM,
        capital_mm=MARK_CAPITAL_MM,
        middle_h=6,
        style="sans",
        feet_out=True,
        spread_deg=46,
    )
    relief.height += letters.raised(field, text, 0.34, 0.05)
    return relief


def _ground(field: Field, radius: Plane, legend: str, spread_deg: float) -> Relief:
    relief = Relief(field)
    blank.rim(relief, radius, 1.5, 0.8)
    relief.beads(circle((0, 0), 26.95, count=128)[:-1], 0.42, 0.3)
    text = letters.around(field, legend, radius_mm=LEGEND_RADIUS_MM, capital_mm=2.65, spread_deg=spread_deg)
    relief.height += letters.raised(field, text, 0.5)
    return relief
