"""Drawing findings on photographs, as long as nobody has signed the report."""

from django.core.exceptions import ValidationError
from django.db import transaction

from records.annotating.shapes import corners
from records.models import Finding, FindingMark, Photo
from records.services.condition import refuse_if_signed


def draw(*, finding: Finding, photo: Photo, shape: str, points: list[list[float]], mark: FindingMark | None = None):
    """Keep a shape of a finding, new or redrawn."""
    if photo.item_id != finding.report.item_id:
        raise ValidationError(f"{photo} does not show {finding.report.item.number}: choose one of its own photographs.")
    if any(
        not (0 <= x <= photo.width_px_count and 0 <= y <= photo.height_px_count) for x, y in corners("line", points)
    ):
        raise ValidationError("A point lies outside the picture: set it anew.")
    with transaction.atomic():
        refuse_if_signed(finding.report)
        mark = mark or FindingMark(finding=finding, photo=photo)
        mark.shape, mark.points = shape, points
        mark.clean()
        mark.save()
    return mark


def rub_out(*, mark: FindingMark) -> None:
    with transaction.atomic():
        refuse_if_signed(mark.finding.report)
        mark.delete()
