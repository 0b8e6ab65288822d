"""Reading every kept file again: is it there, is it the one that came, does anything lie there that nobody knows?"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from pathlib import Path

from django.conf import settings
from django.db import transaction

from records import clock
from records.extensions import KeptFile
from records.imaging import UNFINISHED, digest_of
from records.kept_files import every_file, found_on_disk
from records.models import Duty, FileCheck
from records.roles import REGISTRAR

LOOK_AFTER = "Look after the kept files"
MISSING, CHANGED, UNKNOWN = "missing", "changed", "unknown"
NAMED = 200  # of each kind by name; the rest are counted


@dataclass
class Reading:
    """What has been found so far. Paths are held, contents never are."""

    read_count: int = 0
    size_bytes: int = 0
    counts: dict[str, int] = field(default_factory=lambda: {MISSING: 0, CHANGED: 0, UNKNOWN: 0})
    found: list[dict[str, str]] = field(default_factory=list)
    known: set[str] = field(default_factory=set)
    digests: set[str] = field(default_factory=set)

    def note(self, state: str, path: Path, words: str = "", url: str = "") -> None:
        self.counts[state] += 1
        if self.counts[state] <= NAMED:
            self.found.append({"state": state, "path": short(path), "words": words, "url": url})


def check_files(*, tell: Callable[[int, int], None]) -> FileCheck:
    """Read all, keep the result; `tell` hears how many files and bytes are read."""
    started_at, reading = clock.now(), Reading()
    absent = [file for file in every_file() if not read_again(file, reading, tell)]
    for file in absent:
        if not file.path.is_file():  # one that was being laid in its place has come meanwhile
            reading.note(MISSING, file.path, file.words, file.url)
    _look_for_strangers(reading, since=started_at.timestamp())
    check = FileCheck(
        started_at=started_at, ended_at=clock.now(), read_count=reading.read_count, size_bytes_count=reading.size_bytes,
        missing_count=reading.counts[MISSING], changed_count=reading.counts[CHANGED],
        unknown_count=reading.counts[UNKNOWN], found=reading.found,
    )  # fmt: skip
    with transaction.atomic():
        check.save()
        if not check.is_sound and not Duty.objects.open().filter(sentence__startswith=LOOK_AFTER).exists():
            sentence = f"{LOOK_AFTER}: {check.trouble_words}. Their names stand under Kept files."
            Duty.objects.create(sentence=sentence, due_on=clock.today(), role=REGISTRAR)
    return check


def read_again(file: KeptFile, reading: Reading, tell: Callable[[int, int], None]) -> bool:
    """Whether the file is there; what is wrong with it is noted."""
    reading.known.add(str(file.path))
    reading.digests.add(file.sha256)
    try:
        with file.path.open("rb") as content:
            digest = digest_of(content)
            size_bytes = content.seek(0, 2)
    except FileNotFoundError:
        return False
    except OSError as error:  # a disk that cannot give it back has changed it as well
        reading.note(CHANGED, file.path, f"{file.words}: {error.strerror}", file.url)
        return True
    reading.read_count += 1
    reading.size_bytes += size_bytes
    tell(reading.read_count, reading.size_bytes)
    if digest != file.sha256:
        reading.note(CHANGED, file.path, file.words, file.url)
    return True


def _look_for_strangers(reading: Reading, *, since: float) -> None:
    for path in sorted(_strangers(found_on_disk(), reading)):
        if path.is_file() and path.stat().st_mtime < since:  # later ones belong to rows that were made meanwhile
            reading.note(UNKNOWN, path, "left half-written" if path.name.startswith(UNFINISHED) else "")


def _strangers(paths: Iterable[Path], reading: Reading) -> Iterable[Path]:
    """Files that no row names; a small copy belongs to the original whose digest its name carries."""
    for path in paths:
        original = f"{path.parent.name}{path.stem.partition('-')[0]}"
        is_copy = "derivatives" in path.parts and original in reading.digests
        if str(path) not in reading.known and not is_copy:
            yield path


def short(path: Path) -> str:
    """The path within the data folder."""
    return str(path.relative_to(settings.DATA_DIR) if path.is_relative_to(settings.DATA_DIR) else path)
