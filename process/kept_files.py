"""Loggers' files, read again together with the register's own."""

from collections.abc import Iterable

from process.models import Trace
from records import imaging
from records.extensions import KeptFile, kept_files

AT_ONCE = 500  # rows held in memory


def traces() -> Iterable[KeptFile]:
    for trace in Trace.objects.select_related("run").order_by("pk").iterator(chunk_size=AT_ONCE):
        yield KeptFile(imaging.original_path(trace.path), trace.sha256, f"trace {trace}", trace.get_absolute_url())


kept_files.append(traces)
