"""What is drawn on the photographs of a report: shapes with their numbers and patterns, and the legend."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from django.utils import timezone

from records.annotating.labels import Placed, placed
from records.annotating.shapes import corners, path
from records.models import Finding, FindingMark, Photo, Term

Pattern = Term.Pattern
PATTERN_SHARE = 60  # patterns repeat in the longer side of a picture


@dataclass(frozen=True)
class Drawn:
    """One shape of a finding, as a picture shows it."""

    mark: FindingMark
    finding: Finding

    @property
    def path(self) -> str:
        return path(self.mark.shape, self.mark.points)

    @property
    def kind(self) -> str:
        return self.mark.shape

    @property
    def dots(self) -> str:
        return " ".join(f"M {x:.1f} {y:.1f} h 0" for x, y in self.mark.points)

    @property
    def label(self) -> str:
        return str(self.finding.position_count)

    @property
    def is_open(self) -> bool:
        """Points and lines enclose nothing that a pattern could fill."""
        return self.mark.shape in {FindingMark.Shape.POINT, FindingMark.Shape.LINE}

    @property
    def outline(self) -> list[tuple[float, float]]:
        return corners(self.mark.shape, self.mark.points)


@dataclass(frozen=True)
class Map:
    """A photograph with everything that is drawn on it."""

    photo: Photo
    drawn: list[Drawn]

    @property
    def legend(self) -> list[tuple[str, str]]:
        """(pattern, its words) for the patterns that lie on this photograph."""
        used = {d.finding.term.pattern for d in self.drawn}
        return [(p.value, p.label) for p in Pattern if p.value in used]

    @property
    def words(self) -> str:
        """What a person who does not see the picture is told."""
        numbers = ", ".join(dict.fromkeys(f"finding {d.finding.position_count}" for d in self.drawn))
        return f"{self.photo.view_words}: {numbers or 'nothing drawn'}"

    @property
    def pattern_px(self) -> int:
        """Fine enough to be told in a small shape."""
        return max(self.photo.width_px_count, self.photo.height_px_count) // PATTERN_SHARE

    @property
    def placed(self) -> list[Placed]:
        return placed(self.drawn, (self.photo.width_px_count, self.photo.height_px_count))


def maps_of(findings: Iterable[Finding], photos: Iterable[Photo] = ()) -> list[Map]:
    """Each photograph on which something is drawn, and the others that were asked for; reads `marks__photo`."""
    drawn: dict[int, list[Drawn]] = {photo.pk: [] for photo in photos}
    known = {photo.pk: photo for photo in photos}
    for finding in findings:
        for mark in finding.marks.all():
            known.setdefault(mark.photo_id, mark.photo)
            drawn.setdefault(mark.photo_id, []).append(Drawn(mark, finding))
    return [Map(known[pk], shapes) for pk, shapes in drawn.items()]


def could_show(photo: Photo, on: date) -> bool:
    """Whether it can show how the thing looked on that day; one without a date may, and is flagged."""
    return photo.taken_at is None or timezone.localtime(photo.taken_at).date() <= on
