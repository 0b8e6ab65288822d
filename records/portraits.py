"""The best photograph of a thing: the one that stands for it in lists and at the head of its page."""

from collections.abc import Iterable
from typing import Protocol

from django.db.models import Case, IntegerField, OuterRef, QuerySet, Subquery, Value, When

from records.models import Photo

# The face first; a bench sheet or a rig never stands for a thing.
RANKS = [Photo.View.OBVERSE, Photo.View.OVERALL, Photo.View.REVERSE, Photo.View.RAKING, Photo.View.EDGE,
         Photo.View.DETAIL, Photo.View.MARK]  # fmt: skip


class Pictured(Protocol):
    """A photograph, or its line among what hangs on a thing."""

    pk: int

    @property
    def view(self) -> str: ...


def in_order(photos: Iterable[Pictured]) -> list[Pictured]:
    """Photographs as a page shows them: the face first; of two alike the later, which shows how the thing looks now."""
    return sorted(photos, key=lambda photo: (RANKS.index(photo.view) if photo.view in RANKS else len(RANKS), -photo.pk))


def best_of(photos: Iterable[Pictured]) -> Pictured | None:
    """The photograph that stands for the thing."""
    return next((photo for photo in in_order(photos) if photo.view in RANKS), None)


def with_portraits(items: QuerySet) -> QuerySet:
    """Each thing with `portrait_id`, the key of its best photograph, in the same query."""
    rank = Case(*(When(view=view, then=Value(i)) for i, view in enumerate(RANKS)), output_field=IntegerField())
    photos = Photo.objects.filter(item=OuterRef("pk"), view__in=RANKS).order_by(rank, "-pk")
    return items.annotate(portrait_id=Subquery(photos.values("pk")[:1]))
