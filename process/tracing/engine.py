"""duckdb for one reading: begun once for a process, given up after a large file."""

from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from typing import Any

# Nothing is ever fetched from elsewhere.
SEALED: dict[str, str | bool | int | float | list[str]] = {
    "autoinstall_known_extensions": "false",
    "autoload_known_extensions": "false",
    "threads": "2",
}
# After 1,000,000 rows (46 MB) the worker keeps 60 MB and its next reading is a tenth quicker; after larger files it
# would keep too much.
KEPT_BYTES = 64_000_000


@cache
def _begun() -> Any:
    """Empty and in memory; to begin one takes as long as 80,000 lines."""
    import duckdb  # heavy: only where a trace is read

    return duckdb.connect(config=SEALED)


@contextmanager
def engine(size_bytes: int) -> Iterator[Any]:
    """A cursor of its own for each reading, as duckdb asks of threads.

    The engine given up ends with its last cursor: to close it would cut the others off.
    """
    try:
        with _begun().cursor() as cursor:
            yield cursor
    finally:
        if size_bytes > KEPT_BYTES:
            _begun.cache_clear()
