"""Two photographs over each other: which ones are offered, and how the earlier lies on the later."""

from records.annotating.aligning import Matrix, NotAligned, aligned, fitted
from records.models import ConditionReport, Photo, PhotoPair


def likely(report: ConditionReport) -> dict[str, Photo]:
    """A view of this examination and the same view of the one it is compared with; else the last before it."""
    own = list(report.photos.all())
    earlier = Photo.objects.filter(item=report.item, taken_at__isnull=False).order_by("-taken_at")
    for after in own:
        if after.taken_at is None:
            continue
        before = earlier.filter(view=after.view, taken_at__lt=after.taken_at).exclude(pk=after.pk).first()
        if before:
            return {"before": before, "after": after}
    return {}


def sizes(pair: PhotoPair) -> tuple[tuple[int, int], tuple[int, int]]:
    one, two = pair.before, pair.after
    return (one.width_px_count, one.height_px_count), (two.width_px_count, two.height_px_count)


def laid(pair: PhotoPair) -> tuple[Matrix, str]:
    """How the earlier picture lies on the later, and in words by what."""
    try:
        matrix = aligned(pair.before_points, pair.after_points)
    except NotAligned:
        return fitted(*sizes(pair)), "laid edge on edge: set two or three points that are the same on both"
    return matrix, f"aligned by {len(pair.before_points)} points"


def onto_the_later(pair: PhotoPair) -> Matrix | None:
    """The way back, from pixels of the later to those of the earlier; nothing where no points settle it."""
    try:
        return aligned(pair.after_points, pair.before_points)
    except NotAligned:
        return None
