"""Keeping a photograph: the file first beside its place, then the row and the file together."""

from typing import Any

from django.core.files import File
from django.db import transaction
from django.utils import timezone

from records import imaging
from records.models import Photo


def keep_photo(*, file: File, name: str, **about: Any) -> Photo:
    """Examine, keep byte for byte, derive, and record. Raises imaging.PictureRefused with nothing left behind.

    `undated_at` is when it was taken if the camera did not write it.
    """
    facts = imaging.examine(file, name)
    undated_at = about.pop("undated_at", None)
    taken_at = about.pop("taken_at", None) or facts.seen.taken_at or undated_at
    if taken_at and timezone.is_naive(taken_at):
        taken_at = timezone.make_aware(taken_at)
    with imaging.stage(file, facts) as staged, transaction.atomic():
        path = staged.keep()
        # One that cannot be written now is made when it is first asked for.
        transaction.on_commit(lambda: imaging.put_copies(facts.sha256, facts.copies), robust=True)
        return Photo.objects.create(
            original_name=name[:255],
            path=path,
            sha256=facts.sha256,
            media_type=facts.media_type,
            camera=facts.seen.camera,
            size_bytes_count=facts.size_bytes,
            width_px_count=facts.width_px,
            height_px_count=facts.height_px,
            taken_at=taken_at,
            **about,
        )
