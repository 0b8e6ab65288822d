"""Where a cathode's area comes from: each part by its shape, with its ±, and the sum that plans are reckoned on."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

from pint import Quantity
from uncertainties import ufloat

from process.chemistry.areas import cap_area, cone_area, cylinder_area, foil_area, plate_area, revolution_area
from process.chemistry.plan import relief_disc_area
from process.models import AreaPart, Cathode
from process.summaries.evidence import quantity
from process.summaries.figures import apart, figure
from records import units
from records.figures import Figure
from records.units import ureg

Shape = AreaPart.Shape
# How well each way is known, in per cent, where nobody says better; common practice, from memory.
USUAL_PCT = {
    Shape.DISC: 10.0, Shape.PLATE: 3.0, Shape.CYLINDER: 3.0, Shape.CONE: 5.0, Shape.CAP: 5.0, Shape.PROFILE: 5.0,
    Shape.FOIL: 5.0, Shape.SCAN: 3.0, Shape.ENTERED: 20.0,
}  # fmt: skip
USUAL_FACTOR = 1.08  # of a medal in low relief; common practice, from memory
MOST_POINTS = 400
FIGURES = 3  # an area known to some per cent is kept with three figures


class ProfileUnreadable(ValueError):
    """A line of a profile is no pair of numbers; the message says which."""


def _lengths(**fields: str) -> Callable[[AreaPart], dict[str, Any]]:
    return lambda part: {name: quantity(part, field) for name, field in fields.items()}


def _disc(part: AreaPart) -> dict[str, Any]:
    return {"diameter": quantity(part, "diameter_mm"), "relief_factor": part.relief_factor or USUAL_FACTOR}


def _profile(part: AreaPart) -> dict[str, Any]:
    points = points_of(part.profile)
    mm = [[ureg.Quantity(value, "mm") for value in column] for column in zip(*points, strict=True)]
    return {"radii": mm[0], "heights": mm[1]} if mm else {"radii": [], "heights": []}


FORMULAS: dict[str, tuple[Callable[..., Any], Callable[[AreaPart], dict[str, Any]]]] = {
    Shape.DISC: (relief_disc_area, _disc),
    Shape.PLATE: (plate_area, _lengths(length="length_mm", width="width_mm")),
    Shape.CYLINDER: (cylinder_area, _lengths(diameter="diameter_mm", length="length_mm")),
    Shape.CONE: (
        cone_area, _lengths(diameter="diameter_mm", upper_diameter="inner_diameter_mm", height="height_mm"),
    ),
    Shape.CAP: (cap_area, _lengths(diameter="diameter_mm", height="height_mm")),
    Shape.PROFILE: (revolution_area, _profile),
    Shape.FOIL: (
        foil_area, _lengths(foil_mass="foil_mass_g", sample_mass="sample_mass_g", sample_area="sample_area_dm2"),
    ),
}  # fmt: skip


def points_of(text: str) -> list[tuple[float, float]]:
    """Radius and height of each line: “12,5 40” or “12.5; 40”; in millimetres unless a unit stands behind."""
    points = []
    lines = [line for line in text.splitlines() if line.strip()]
    if len(lines) > MOST_POINTS:
        raise ProfileUnreadable(f"Give at most {MOST_POINTS} points: fewer describe a turned piece as well.")
    for number, line in enumerate(lines, start=1):
        parts = line.replace(";", " ").split()
        if len(parts) != 2:
            raise ProfileUnreadable(
                f"Line {number}, “{line.strip()[:30]}”: write a radius and a height, such as 12.5 40."
            )
        try:
            points.append((units.parse(parts[0], "_mm").canonical, units.parse(parts[1], "_mm").canonical))
        except units.UnitsError as error:
            raise ProfileUnreadable(f"Line {number}: {error}") from error
    return points


def one_piece(part: AreaPart) -> Figure:
    """The area of one piece by its formula, with its working; a scan and a typed area have none."""
    label = str(part)
    if part.shape not in FORMULAS:
        pieces = part.pieces_count or 1
        kind = "quoted" if part.shape == Shape.ENTERED else "calculated"
        return Figure(label, part.area_dm2 / pieces if part.area_dm2 else None, "_dm2", kind)
    function, inputs = FORMULAS[part.shape]
    return figure(label, "_dm2", function, **inputs(part))


def kept_area(part: AreaPart) -> float | None:
    """All its pieces, with the figures that its ± supports; None where it cannot be computed."""
    found = one_piece(part)
    return None if found.value is None else float(f"{found.value * part.pieces_count:.{FIGURES}g}")


def area_quantity(part: AreaPart) -> Quantity:
    return ureg.Quantity(ufloat(part.area_dm2, part.area_dm2 * part.uncertainty_pct / 100), "dm**2")


@dataclass(frozen=True)
class AreaLine:
    """One part as the page shows it."""

    part: AreaPart
    figure: Figure
    dm2: float
    plus_minus: float


@dataclass(frozen=True)
class AreaSum:
    lines: tuple[AreaLine, ...]
    face: Quantity | None
    whole: Quantity | None
    words: str


def sum_of(cathode: Cathode, parts: Iterable[AreaPart]) -> AreaSum:
    """Faces make the face; everything takes current. Without a face among the parts the typed face stays."""
    rows = list(parts)
    lines = tuple(AreaLine(row, one_piece(row), *apart(area_quantity(row).m)) for row in rows)
    faces = [area_quantity(row) for row in rows if row.part == AreaPart.Part.FACE]
    others = [area_quantity(row) for row in rows if row.part != AreaPart.Part.FACE]
    if not rows:
        return AreaSum((), None, None, "")
    face = sum(faces[1:], start=faces[0]) if faces else quantity(cathode, "face_area_dm2")
    return AreaSum(lines, face, sum(others, start=face), "; ".join(words_of(row) for row in rows)[:200])


def words_of(part: AreaPart) -> str:
    """“disc of 58.4 mm, relief factor 1.08”, for the method of the sum."""
    mm = {name: units.plain(getattr(part, name)) for name in SIZES if getattr(part, name) is not None}
    sizes = " × ".join(mm.values())
    factor = f", relief factor {part.relief_factor or USUAL_FACTOR:g}" if part.shape == Shape.DISC else ""
    many = f"{part.pieces_count} × " if part.pieces_count > 1 else ""
    return f"{many}{part.get_part_display()}: {part.get_shape_display()}{f' {sizes} mm' if sizes else ''}{factor}"


SIZES = ("diameter_mm", "inner_diameter_mm", "length_mm", "width_mm", "height_mm")
