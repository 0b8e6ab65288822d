"""Usual and impossible values that a new register starts with."""

import tomllib
from pathlib import Path

from django.db import transaction

from process.models import Range

RANGES = Path(__file__).with_name("ranges.toml")


def ensure_ranges(**_signal: object) -> None:
    """Fill an empty table; one that the museum has begun to edit is never touched."""
    if Range.objects.exists():
        return
    with transaction.atomic():
        for row in tomllib.loads(RANGES.read_text(encoding="utf-8"))["range"]:
            Range.objects.create(**row)
