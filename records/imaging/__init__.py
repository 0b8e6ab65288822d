"""Photographs: looked at before they are believed, kept byte for byte, shown through small copies.

`naming`, `opening`, `exif`, `rendering` and `facts` decode and draw and know nothing of Django; `store` is where
files live.
"""

from records.imaging.exif import Seen
from records.imaging.facts import MEGABYTE, PictureFacts, digest_of
from records.imaging.naming import TAKEN, PictureRefused
from records.imaging.store import (
    SIZES_PX,
    UNFINISHED,
    Staged,
    derivative_path,
    derive,
    examine,
    keep,
    original_path,
    put_copies,
    remove_unfinished,
    seen_in,
    stage,
    stage_as,
)

__all__ = [
    "MEGABYTE",
    "SIZES_PX",
    "TAKEN",
    "UNFINISHED",
    "PictureFacts",
    "PictureRefused",
    "Seen",
    "Staged",
    "derivative_path",
    "derive",
    "digest_of",
    "examine",
    "keep",
    "original_path",
    "put_copies",
    "remove_unfinished",
    "seen_in",
    "stage",
    "stage_as",
]
