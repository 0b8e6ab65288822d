"""The photographs of a condition report: findings drawn on them, their details, pairs beside each other."""

from dataclasses import replace
from io import BytesIO

from PIL import Image

from records import imaging
from records.annotating.shapes import around
from records.imaging import tiles
from records.mapping import Drawn, Map
from records.models import Finding, Item, Photo, PhotoPair
from records.pdf import blocks as b
from records.photo_pairs import onto_the_later
from records.reports.parts import caption_of, printed, require_file

DETAIL_PX = 900  # 55 mm at more than 300 dpi
PAIR_PX = 1200


def shape_of(drawn: Drawn) -> b.MapShape:
    points = tuple((float(x), float(y)) for x, y in drawn.mark.points)
    return b.MapShape(drawn.mark.shape, points, drawn.label, drawn.finding.term.pattern)


def mapped(shown: Map, item: Item) -> b.MappedPhoto:
    """The whole photograph with everything that is drawn on it and its legend."""
    photo = shown.photo
    plain = printed(photo, caption_of(photo, item))
    window = (0.0, 0.0, float(photo.width_px_count), float(photo.height_px_count))
    return b.MappedPhoto(plain.source, plain.caption, window, tuple(map(shape_of, shown.drawn)), tuple(shown.legend))


def detail(photo: Photo, drawn: list[Drawn], item: Item) -> b.MappedPhoto:
    """The piece of the photograph around all that is drawn of one finding, as sharp as it was taken."""
    finding = drawn[0].finding
    points = [point for each in drawn for point in each.mark.points]
    left, top, width, height = around(points, (photo.width_px_count, photo.height_px_count))
    box = (int(left), int(top), max(int(left + width), int(left) + 1), max(int(top + height), int(top) + 1))
    require_file(photo)
    caption = caption_of(photo, item, f"Finding {finding.position_count}, {finding.term}, {finding.location}.")
    # A detail shows the metal, not the pattern.
    shapes = tuple(replace(shape_of(each), pattern="plain") for each in drawn)
    x, y, right, bottom = map(float, box)
    return b.MappedPhoto(tiles.crop(photo.path, box, DETAIL_PX), caption, (x, y, right, bottom), shapes)


def details(findings: list[Finding], maps: list[Map], item: Item) -> list[b.Photo]:
    """By number: what is drawn, in detail; else the photograph that was joined to the finding."""
    found: list[b.Photo] = []
    for finding in findings:
        mine = [(shown.photo, [d for d in shown.drawn if d.finding == finding]) for shown in maps]
        mine = [(photo, drawn) for photo, drawn in mine if drawn]
        # A photograph that is a detail itself stands among those that are drawn on.
        found += [detail(photo, drawn, item) for photo, drawn in mine if photo.view != Photo.View.DETAIL]
        if not mine and finding.photo:
            lead = f"Finding {finding.position_count}, {finding.term}."
            found.append(printed(finding.photo, caption_of(finding.photo, item, lead)))
    return found


def pair(both: PhotoPair, item: Item) -> tuple[b.Photo, b.Photo]:
    """The earlier, laid on the later as far as points settle it, and the later."""
    later = printed(both.after, f"Later: {caption_of(both.after, item)}")
    earlier = printed(both.before, f"Earlier: {caption_of(both.before, item)}")
    matrix = onto_the_later(both)
    if matrix is None:
        return earlier, later
    size = both.after.width_px_count, both.after.height_px_count
    return b.Photo(_laid(both.before, matrix, size), f"{earlier.caption} Laid on the later by points."), later


def _laid(before: Photo, matrix: tuple[float, ...], size: tuple[int, int]) -> bytes:
    """The earlier picture in the frame of the later; `matrix` leads from the later’s pixels to the earlier’s."""
    with Image.open(imaging.derive(before.path)["screen"]) as opened:
        small = opened.convert("RGB")
    shrunk = small.width / before.width_px_count
    share = min(1.0, PAIR_PX / max(size))
    a, bb, c, d, e, f = matrix
    way = (a * shrunk / share, c * shrunk / share, e * shrunk, bb * shrunk / share, d * shrunk / share, f * shrunk)
    whole = round(size[0] * share), round(size[1] * share)
    laid = small.transform(whole, Image.Transform.AFFINE, way, Image.Resampling.BICUBIC, fillcolor="white")
    out = BytesIO()
    laid.save(out, "JPEG", quality=90)
    return out.getvalue()
