"""What was measured on a photograph, reckoned from its points and the scale, as pages show it."""

from dataclasses import dataclass

from django.core.exceptions import ObjectDoesNotExist
from uncertainties import UFloat, ufloat

from records import units
from records.annotating.labels import Placed, placed
from records.imaging import measuring
from records.models import Photo, PhotoMeasure, PhotoScale

SMALL_MM2, MM2_PER_DM2 = 100.0, 10_000.0


@dataclass(frozen=True)
class Shape:
    """One line or outline on the picture, and what stands beside it."""

    kind: str
    outline: list[tuple[float, float]]
    label: str

    @property
    def dots(self) -> str:
        return " ".join(f"M {x:g} {y:g} h 0" for x, y in self.outline)

    @property
    def path(self) -> str:
        way = " L ".join(f"{x:g} {y:g}" for x, y in self.outline)
        return f"M {way}{' Z' if self.kind == PhotoMeasure.Kind.AREA else ''}"


@dataclass(frozen=True)
class Measured:
    row: PhotoMeasure
    text: str
    label: str


def scale_of(photo: Photo) -> PhotoScale | None:
    try:
        return photo.scale
    except ObjectDoesNotExist:
        return None


def mm_per_px(scale: PhotoScale) -> UFloat:
    spread = scale.plus_minus("length_mm")
    length = ufloat(scale.length_mm, spread) if spread else scale.length_mm
    return measuring.mm_per_px(scale.points, length, scale.pointing_px_count)


def scale_words(scale: PhotoScale) -> str:
    """“1 mm is 42.7 px, ± 0.4 %, by 40 mm in the picture.”"""
    found = mm_per_px(scale)
    share_pct = 100 * found.std_dev / found.nominal_value
    known = units.show(scale.length_mm, "_mm", plus_minus=scale.plus_minus("length_mm"))
    return f"1 mm is {1 / found.nominal_value:.3g} px, ± {share_pct:.2g} %, by {known} in the picture."


def value_of(measure: PhotoMeasure, scale: PhotoScale) -> UFloat:
    """Millimetres, or square millimetres."""
    reckon = measuring.area_mm2 if measure.kind == PhotoMeasure.Kind.AREA else measuring.distance_mm
    return reckon(measure.points, mm_per_px(scale), scale.pointing_px_count)


def words_of(measure: PhotoMeasure, scale: PhotoScale) -> str:
    """The figure with its unit and ±: 58.4 ± 0.2 mm, 31 ± 2 mm², 26.8 ± 0.1 cm²."""
    found = value_of(measure, scale)
    if measure.kind == PhotoMeasure.Kind.DISTANCE:
        return units.show(found.nominal_value, "_mm", plus_minus=found.std_dev)
    unit = "mm²" if found.nominal_value < SMALL_MM2 else "cm²"
    area, spread = found.nominal_value / MM2_PER_DM2, found.std_dev / MM2_PER_DM2
    return units.show(area, "_dm2", unit=unit, plus_minus=spread)


def shown(photo: Photo, scale: PhotoScale | None) -> tuple[list[Measured], list[Placed]]:
    """The measures of a photograph, and what is drawn on it."""
    if scale is None:
        return [], []
    rows = list(photo.measures.select_related("measured_by"))
    measured = [Measured(row, words_of(row, scale), str(index)) for index, row in enumerate(rows, 1)]
    shapes = [Shape("scale", _pairs(scale.points), units.show(scale.length_mm, "_mm"))]
    shapes += [Shape(one.row.kind, _pairs(one.row.points), one.label) for one in measured]
    return measured, placed(shapes, (photo.width_px_count, photo.height_px_count))


def _pairs(points: list[list[float]]) -> list[tuple[float, float]]:
    return [(x, y) for x, y in points]
