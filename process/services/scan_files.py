"""Scans from which an area was reckoned: kept byte for byte under their digest."""

from pathlib import Path, PurePath
from typing import IO

from django.db import transaction

from process.models import AreaPart
from process.services.areas import keep_part
from records import imaging

ENDINGS = {".stl", ".obj", ".ply"}


def stored_path(sha256: str, name: str) -> str:
    ending = PurePath(name).suffix.casefold()
    return f"scans/{sha256[:2]}/{sha256[2:]}{ending if ending in ENDINGS else '.scan'}"


def keep_scanned(*, part: AreaPart, file: IO[bytes]) -> AreaPart:
    """The part and the file that it came from, together or not at all."""
    file.seek(0)
    with imaging.stage_as(file, part.scan_facts["path"]) as staged, transaction.atomic():
        staged.keep()
        return keep_part(part=part)


def path_of(part: AreaPart) -> Path | None:
    """None where only the digest was kept, or the file is gone."""
    stored = part.scan_facts.get("path")
    path = imaging.original_path(stored) if stored else None
    return path if path and path.is_file() else None
