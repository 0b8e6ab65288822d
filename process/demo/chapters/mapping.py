"""Where the findings lie on the demo's photographs: told in millimetres on the piece, kept in pixels."""

from process.demo.pictures.drawing import frame_of
from process.demo.rows import Table, find
from records.models import Finding, Photo
from records.services.mapping import draw


def draw_all(finding: Finding, table: Table, pictures: dict[str, str]) -> None:
    """Each drawing of a finding; `pictures` says what the photograph of a name was drawn from."""
    for drawn in table.get("drawn", []):
        photo = find(Photo, drawn["photo"])
        frame = frame_of(pictures[drawn["photo"]], photo.width_px_count)
        places = [frame.place_px(float(x), float(y)) for x, y in drawn["points_mm"]]
        points = [[round(x, 1), round(y, 1)] for x, y in places]
        draw(finding=finding, photo=photo, shape=drawn["shape"], points=points)
