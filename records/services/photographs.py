"""Keeping a photograph: the file first beside its place, then the row and the file together."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

from django.core.files import File
from django.db import transaction
from django.utils import timezone

from records import imaging
from records.models import Photo


class KeptAlready(imaging.PictureRefused):
    """The same file, byte for byte, is a photograph of the register already: that one is offered."""

    def __init__(self, name: str, photo: Photo) -> None:
        of = f" of {photo.item.number}" if photo.item else ""
        super().__init__(f"“{name}” is kept already, as “{photo}”{of}; it is not kept twice.")
        self.photo = photo


def examine_new(file: File, name: str) -> imaging.PictureFacts:
    """What the file is, if it is a picture and not kept yet."""
    refuse_twice(imaging.digest_of(file), name)
    return imaging.examine(file, name)


def keep_photo(*, file: File, name: str, facts: imaging.PictureFacts | None = None, **about: Any) -> Photo:
    """Examine, keep byte for byte, derive, and record. Raises imaging.PictureRefused with nothing left behind.

    `facts` are those of a file that was examined before a transaction was begun; `undated_at` is when it was
    taken if the camera did not write it.
    """
    facts = facts or examine_new(file, name)
    undated_at = about.pop("undated_at", None)
    taken_at = about.pop("taken_at", None) or facts.seen.taken_at or undated_at
    if taken_at and timezone.is_naive(taken_at):
        taken_at = timezone.make_aware(taken_at)
    with imaging.stage(file, facts) as staged, transaction.atomic():
        refuse_twice(facts.sha256, name)  # somebody else may have sent it while this one was being read
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


def refuse_twice(sha256: str, name: str) -> None:
    """Refuse a file that is kept already, and name the photograph it is."""
    if kept := Photo.objects.filter(sha256=sha256).select_related("item").first():
        raise KeptAlready(name, kept)


@dataclass(frozen=True)
class Sent:
    """What became of one file of a sending."""

    name: str
    photo: Photo | None = None
    sentence: str = ""

    @property
    def state(self) -> str:
        if self.photo is None:
            return "blocked"
        return "look" if self.sentence or self.photo.is_undated else "done"

    @property
    def word(self) -> str:
        if self.photo is None:
            return "refused"
        return "kept already" if self.sentence else "kept, undated" if self.photo.is_undated else "kept"


def keep_each(*, files: Iterable[File], join: Callable[[Photo], None], **about: Any) -> list[Sent]:
    """Keep what is a picture and say by name why another is not; `join` ties each to what it was sent for."""
    sent = []
    for file in files:
        try:
            photo = keep_photo(file=file, name=file.name, **about)
            sent.append(Sent(file.name, photo))
        except KeptAlready as twice:
            photo = twice.photo
            sent.append(Sent(file.name, photo, str(twice)))
        except imaging.PictureRefused as reason:
            sent.append(Sent(file.name, None, str(reason)))
            continue
        with transaction.atomic():
            join(photo)
    return sent
