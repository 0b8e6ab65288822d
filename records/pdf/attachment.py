"""The record that is attached to a paper: its bytes and their digest."""

import hashlib
import json
from typing import Any


def record_bytes(record: dict[str, Any] | bytes) -> bytes:
    """The record as it is attached: bytes untouched, a mapping as sorted, readable JSON."""
    if isinstance(record, bytes):
        return record
    return json.dumps(record, ensure_ascii=False, indent=2, sort_keys=True).encode()


def digest(attached: bytes) -> str:
    """SHA-256 of the attached record in hexadecimal."""
    return hashlib.sha256(attached).hexdigest()
