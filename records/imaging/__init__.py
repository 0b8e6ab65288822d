"""Photographs: looked at before they are believed, kept byte for byte, shown through small copies.

`facts`, `exif` and `rendering` decode and draw and know nothing of Django; `store` is where files live.
"""

from records.imaging.facts import PictureFacts, PictureRefused
from records.imaging.store import (
    SIZES_PX,
    Staged,
    derivative_path,
    derive,
    examine,
    keep,
    original_path,
    remove_unfinished,
    stage,
    stage_as,
)

__all__ = [
    "SIZES_PX",
    "PictureFacts",
    "PictureRefused",
    "Staged",
    "derivative_path",
    "derive",
    "examine",
    "keep",
    "original_path",
    "remove_unfinished",
    "stage",
    "stage_as",
]
