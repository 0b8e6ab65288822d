"""Scans from which an area was reckoned: kept byte for byte under their digest."""

from pathlib import Path, PurePath
from typing import IO

from django.db import transaction

from process.models import AreaPart
from process.services.areas import keep_part
from records import clock, gates, imaging
from records.consents import Act
from records.models import Gate

ENDINGS = {".stl", ".obj", ".ply"}


def stored_path(sha256: str, name: str) -> str:
    ending = PurePath(name).suffix.casefold()
    return f"scans/{sha256[:2]}/{sha256[2:]}{ending if ending in ENDINGS else '.scan'}"


def pass_scan(*, part: AreaPart, afterwards: bool) -> None:
    """The owner may have forbidden that the shape of the piece, or of its mould, lies here as a file."""
    mould = part.cathode.mould or (part.cathode.core and part.cathode.core.pull.mould)
    if not mould:
        return
    number = part.cathode.run.number
    act = Act(words=f"A scan is sent for {number}", commission=mould.commission, is_scan=True)
    subject = gates.Subject(mould.model, number, (mould.model, mould.item), act=act)
    gates.pass_gates([Gate.PERMISSION], subject, clock.today(), afterwards=afterwards)


def keep_scanned(*, part: AreaPart, file: IO[bytes], afterwards: bool = False) -> AreaPart:
    """The part and the file that it came from, together or not at all."""
    file.seek(0)
    with imaging.stage_as(file, part.scan_facts["path"]) as staged, transaction.atomic():
        pass_scan(part=part, afterwards=afterwards)
        staged.keep()
        return keep_part(part=part)


def path_of(part: AreaPart) -> Path | None:
    """None where only the digest was kept, or the file is gone."""
    stored = part.scan_facts.get("path")
    path = imaging.original_path(stored) if stored else None
    return path if path and path.is_file() else None
