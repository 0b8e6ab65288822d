"""Scans from which an area was reckoned: kept byte for byte under their digest."""

from pathlib import Path, PurePath
from typing import Any

from django.db import transaction

from process.models import AreaPart, Cathode
from records import clock, gates, imaging
from records.consents import Act
from records.models import Gate, Job

KIND = "scan"
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


def path_of(part: AreaPart) -> Path | None:
    """None where only the digest was kept, or the file is gone."""
    stored = part.scan_facts.get("path")
    path = imaging.original_path(stored) if stored else None
    return path if path and path.is_file() else None


def waiting() -> Any:
    """Jobs of scans that are read or to be read and of which nobody has kept the area yet."""
    ended = [Job.State.REFUSED]
    return Job.objects.filter(kind=KIND, arguments__waits=True).exclude(state__in=ended).order_by("pk")


def waiting_at(*cathodes: Cathode) -> Any:
    return waiting().filter(arguments__cathode__in=[cathode.pk for cathode in cathodes])


def forget(stored: str) -> None:
    """Take the file away once the transaction is through, unless a part or a scan that waits still names it."""

    def unlink() -> None:
        named = AreaPart.objects.filter(scan_facts__path=stored).exists()
        if not named and not waiting().filter(arguments__facts__path=stored).exists():
            imaging.original_path(stored).unlink(missing_ok=True)

    transaction.on_commit(unlink)
