"""What is set by hand on a drawn picture: the ends of the bar that lies in it, and lines on the piece."""

from process.demo.pictures import frame_of, props
from process.demo.pictures.drawing import RIG
from process.demo.rows import Table, build
from records.models import Photo, PhotoMeasure, PhotoScale

BAR_WITHIN = "± 0.05 mm"
POINTING_PX = 1
Place = tuple[float, float]


def measure(photo: Photo, table: Table) -> None:
    """Give a picture with a scale in the frame its scale, and measure what the table names (`mm` from the centre)."""
    if not photo.has_scale or table["picture"] == RIG:
        return
    frame = frame_of(table["picture"], photo.width_px_count)
    left, top, right, _ = props.bar_box(frame)
    bar = {"length_mm": f"{props.bar_mm(frame)} {BAR_WITHIN}"}
    ends = [_set((left, top)), _set((right, top))]
    build(
        PhotoScale, bar, photo=photo, points=ends, pointing_px_count=POINTING_PX, placed_by=photo.taken_by
    ).save()  # fmt: skip
    for line in table.get("measure", []):
        points = [_set(frame.place_px(x, y)) for x, y in line["mm"]]
        PhotoMeasure.objects.create(
            photo=photo, kind=line["kind"], what=line["what"], points=points, measured_by=photo.taken_by
        )


def _set(place: Place) -> list[float]:
    """As a hand sets it: to a tenth of a pixel."""
    return [round(part, 1) for part in place]
