"""Where pictures live: originals by digest, byte for byte; small copies beside them, made once.

A file is written whole and flushed before the row is, stands under a passing name until the row is committed,
and is gone if it never is.
"""

import os
import shutil
import tempfile
import threading
import time
import weakref
from collections.abc import Mapping
from contextlib import AbstractContextManager
from io import BytesIO
from pathlib import Path
from typing import IO

from django.conf import settings
from django.db import transaction

from records.imaging import exif
from records.imaging.facts import MEGABYTE, PictureFacts, examine_picture
from records.imaging.naming import PictureRefused
from records.imaging.opening import open_picture
from records.imaging.rendering import render

# Print: about 100 mm wide at 300 dpi.
SIZES_PX = {"thumbnail": 320, "print": 1200, "screen": 1600}
UNFINISHED = ".unfinished-"
DAY_S = 86_400
# More pictures unfolded at once cost memory and save no time (measured on two cores).
_decoders = threading.BoundedSemaphore(2)


def examine(file: IO[bytes], name: str) -> PictureFacts:
    """Say what the uploaded file is, or raise PictureRefused with one sentence."""
    with _decoders:
        return examine_picture(file, name, limit_bytes=settings.UPLOAD_LIMIT_BYTES, sizes_px=SIZES_PX)


def unfolding() -> AbstractContextManager[object]:
    """Wait for one of the places in which a whole picture may be unfolded."""
    return _decoders


def original_path(stored: str) -> Path:
    """The absolute path of a stored original."""
    return Path(settings.MEDIA_ROOT) / stored


def derivative_path(sha256: str, size: str) -> Path:
    """Where the small copy of that size ("thumbnail", "print", "screen") stands or will stand."""
    return Path(settings.MEDIA_ROOT) / "derivatives" / sha256[:2] / f"{sha256[2:]}-{SIZES_PX[size]}.jpg"


class Staged:
    """An original written to disk but not yet in its place.

    Use it as `with stage(upload, facts) as staged:` around the transaction and call `staged.keep()` inside.
    The finaliser takes the file away when the transaction forgets the callback, as a rollback does.
    """

    def __init__(self, temporary: Path, stored: str) -> None:
        self.stored = stored
        self._temporary = temporary
        self._kept = False
        self._remove = weakref.finalize(self, temporary.unlink, missing_ok=True)

    @property
    def path(self) -> Path:
        """Where the file stands while nobody has promised it a place."""
        return self._temporary

    def __enter__(self) -> "Staged":
        return self

    def __exit__(self, *_exception: object) -> None:
        if not self._kept:
            self._remove()

    def keep(self) -> str:
        """Promise the file its place on commit (at once outside a transaction); return its stored path."""
        self._kept = True
        transaction.on_commit(self._move)
        return self.stored

    def _move(self) -> None:
        place = original_path(self.stored)
        if not place.exists():
            self._temporary.replace(place)
            _flush_folder(place.parent)
        self._remove()


def stage(file: IO[bytes], facts: PictureFacts) -> Staged:
    """Write the original beside its place-to-be, flushed to the disk."""
    return stage_as(file, f"originals/{facts.sha256[:2]}/{facts.sha256[2:]}.{facts.extension}")


def stage_as(file: IO[bytes], stored: str) -> Staged:
    """Any file, kept with the same care under a path of its own in the data folder."""
    return Staged(_write(original_path(stored).parent, file), stored)


def keep(file: IO[bytes], facts: PictureFacts) -> str:
    """Stage and keep in one step, for a caller inside `transaction.atomic()`; return the stored path."""
    return stage(file, facts).keep()


def derive(stored: str) -> dict[str, Path]:
    """Make the small copies that are missing; return the path of each."""
    original = original_path(stored)
    sha256 = original.parent.name + original.stem
    paths = {size: derivative_path(sha256, size) for size in SIZES_PX}
    missing = {size: SIZES_PX[size] for size, path in paths.items() if not path.exists()}
    if missing:
        with _decoders, original.open("rb") as file:
            copies = render(file, missing)
        put_copies(sha256, copies)
    return paths


def put_copies(sha256: str, copies: Mapping[str, bytes]) -> None:
    """Lay small copies in their places, each whole or not at all."""
    for size, content in copies.items():
        put_copy(derivative_path(sha256, size), content)


def seen_in(stored: str) -> exif.Seen | None:
    """What the camera wrote into a stored original, read from its head; None where the file is gone or spoiled."""
    try:
        with original_path(stored).open("rb") as file, open_picture(file, stored) as picture:
            return exif.read(picture)
    except (FileNotFoundError, PictureRefused):
        return None


def remove_unfinished(older_than_s: float = DAY_S) -> int:
    """Take away what a killed process left half-written; return how many."""
    stale = [
        path
        for path in Path(settings.MEDIA_ROOT).glob(f"*/*/{UNFINISHED}*")
        if time.time() - path.stat().st_mtime > older_than_s
    ]
    for path in stale:
        path.unlink(missing_ok=True)
    return len(stale)


def _write(folder: Path, file: IO[bytes]) -> Path:
    folder.mkdir(parents=True, exist_ok=True)
    descriptor, name = tempfile.mkstemp(prefix=UNFINISHED, dir=folder)
    temporary = Path(name)
    try:
        file.seek(0)
        with os.fdopen(descriptor, "wb") as target:
            shutil.copyfileobj(file, target, MEGABYTE)
            target.flush()
            os.fsync(target.fileno())
        file.seek(0)
    except BaseException:
        temporary.unlink(missing_ok=True)
        raise
    return temporary


def put_copy(path: Path, content: bytes) -> None:
    """Lay one copy in its place, whole or not at all."""
    _write(path.parent, BytesIO(content)).replace(path)


def _flush_folder(folder: Path) -> None:
    """Make the new name itself survive a power cut (POSIX)."""
    if hasattr(os, "O_DIRECTORY"):
        descriptor = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        os.fsync(descriptor)
        os.close(descriptor)
