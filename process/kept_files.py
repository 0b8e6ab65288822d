"""Loggers' files and scans, read again together with the register's own."""

from collections.abc import Iterable

from process.models import AreaPart, Trace
from process.services.scan_files import waiting
from records import imaging
from records.extensions import KeptFile, kept_files

AT_ONCE = 500  # rows held in memory


def traces() -> Iterable[KeptFile]:
    for trace in Trace.objects.select_related("run").order_by("pk").iterator(chunk_size=AT_ONCE):
        yield KeptFile(imaging.original_path(trace.path), trace.sha256, f"trace {trace}", trace.get_absolute_url())


def scans() -> Iterable[KeptFile]:
    rows = AreaPart.objects.filter(scan_facts__has_key="path").select_related("cathode").order_by("pk")
    for part in rows.iterator(chunk_size=AT_ONCE):
        facts = part.scan_facts
        yield KeptFile(imaging.original_path(facts["path"]), facts["sha256"], f"scan {part}", part.get_absolute_url())


def scans_that_wait() -> Iterable[KeptFile]:
    for job in waiting():
        facts = job.arguments["facts"]
        yield KeptFile(imaging.original_path(facts["path"]), facts["sha256"], f"scan {facts['name']}", job.url)


kept_files += [traces, scans, scans_that_wait]
