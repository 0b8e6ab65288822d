"""Scans and traces are read again with the photographs; ten thousand files are read without holding them."""

import hashlib
import tracemalloc
from io import StringIO

import pytest
from django.core.management import call_command
from django.core.management.base import CommandError

from process.models import AreaPart
from records import imaging
from records.extensions import KeptFile
from records.models import FileCheck
from records.services import file_checks
from tests.factories import make_cathode, make_run

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture(autouse=True)
def folders(settings, tmp_path):
    settings.DATA_DIR, settings.MEDIA_ROOT, settings.DOCUMENTS_DIR = tmp_path, tmp_path / "files", tmp_path / "papers"
    return tmp_path


def scan(name: str, content: bytes = b"solid of the medal") -> AreaPart:
    """A row as the worker leaves it, with its file."""
    path = f"scans/{name}.stl"
    place = imaging.original_path(path)
    place.parent.mkdir(parents=True, exist_ok=True)
    place.write_bytes(content)
    facts = {"name": f"{name}.stl", "path": path, "sha256": hashlib.sha256(content).hexdigest()}
    cathode = make_cathode(make_run())
    return AreaPart.objects.create(cathode=cathode, shape="scan", area_dm2=1, uncertainty_pct=2, scan_facts=facts)


def run() -> str:
    out = StringIO()
    call_command("check_files", stdout=out, stderr=StringIO())
    return out.getvalue()


def test_a_sound_scan_is_known_and_read():
    scan("medal")

    assert "1 files" in run() or "1 file" in run()
    assert FileCheck.objects.latest("pk").is_sound


@pytest.mark.parametrize(
    ("spoil", "word"),
    [
        (lambda place: place.unlink(), "missing"),
        (lambda place: place.write_bytes(b"solid of another"), "changed"),
        (lambda place: place.with_name("whose.stl").write_bytes(b"stray"), "unknown"),
    ],
)
def test_a_scan_that_is_gone_spoiled_or_nobodys_fails_the_command(spoil, word):
    part = scan("medal")
    spoil(imaging.original_path(part.scan_facts["path"]))
    out = StringIO()

    with pytest.raises(CommandError):
        call_command("check_files", stdout=out, stderr=StringIO())

    assert out.getvalue().startswith(word)
    assert getattr(FileCheck.objects.latest("pk"), f"{word}_count") == 1


def test_ten_thousand_files_are_read_in_bounded_memory(folders, monkeypatch):
    """What stays of a file is its path and its digest: less than two kilobytes each."""
    kept = []
    for number in range(10_000):
        place = folders / "files" / f"{number // 100:03d}" / f"{number}.bin"
        place.parent.mkdir(parents=True, exist_ok=True)
        content = number.to_bytes(4, "big") * 500
        place.write_bytes(content)
        kept.append((place, hashlib.sha256(content).hexdigest()))
    monkeypatch.setattr(file_checks, "every_file", lambda: (KeptFile(path, digest, "", "") for path, digest in kept))
    told = []
    tracemalloc.start()

    check = file_checks.check_files(tell=lambda count, size: told.append(count))

    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert check.is_sound and check.read_count == 10_000 and told[-1] == 10_000
    assert peak < 20_000_000
