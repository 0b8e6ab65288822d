"""Where the findings lie on the demo's photographs: told in millimetres on the piece, kept in pixels."""

from process.demo.pictures.drawing import frame_of
from process.demo.rows import Table, find
from records.models import ConditionReport, Finding, Photo, PhotoPair
from records.services.mapping import draw


def draw_all(finding: Finding, table: Table, pictures: dict[str, str]) -> None:
    """Each drawing of a finding; `pictures` says what the photograph of a name was drawn from."""
    for drawn in table.get("drawn", []):
        photo = find(Photo, drawn["photo"])
        points = _pixels(drawn["points_mm"], pictures[drawn["photo"]], photo)
        draw(finding=finding, photo=photo, shape=drawn["shape"], points=points)


def lay_over(report: ConditionReport, table: Table, pictures: dict[str, str]) -> None:
    """Two photographs from one camera stand, aligned by the same places on the piece."""
    before, after = find(Photo, table["before"]), find(Photo, table["after"])
    picture = pictures[table["after"]]
    PhotoPair.objects.create(
        report=report, before=before, after=after, before_points=_pixels(table["points_mm"], picture, before),
        after_points=_pixels(table["points_mm"], picture, after),
    )  # fmt: skip


def _pixels(points_mm: list[list[float]], picture: str, photo: Photo) -> list[list[float]]:
    frame = frame_of(picture, photo.width_px_count)
    places = [frame.place_px(float(x), float(y)) for x, y in points_mm]
    return [[round(x, 1), round(y, 1)] for x, y in places]
