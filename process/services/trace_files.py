"""Files of traces: kept byte for byte under their digest, and taken away when no trace names them any more."""

import hashlib
from pathlib import Path
from typing import IO

from django.db import transaction

from process.models import Trace
from process.tracing import TraceRefused
from records import imaging

CHUNK_BYTES = 1 << 20


def digest(file: IO[bytes]) -> str:
    found = hashlib.sha256()
    file.seek(0)
    while chunk := file.read(CHUNK_BYTES):
        found.update(chunk)
    file.seek(0)
    return found.hexdigest()


def stored_path(sha256: str) -> str:
    return f"traces/{sha256[:2]}/{sha256[2:]}.txt"


def path_of(trace: Trace) -> Path:
    """Where the file stands; a file that is gone or was changed is said to be so."""
    path = imaging.original_path(trace.path)
    if not path.is_file():
        raise TraceRefused(f"the file of {trace} is not in the data folder: restore it from the backup.")
    return path


def is_unchanged(trace: Trace) -> bool:
    """Whether the file still has the digest that it came with."""
    with path_of(trace).open("rb") as file:
        return digest(file) == trace.sha256


def forget(trace: Trace) -> None:
    """Take the file away once the transaction is through, unless another trace names it."""
    path = imaging.original_path(trace.path)
    transaction.on_commit(lambda: None if Trace.objects.filter(path=trace.path).exists() else path.unlink(True))
