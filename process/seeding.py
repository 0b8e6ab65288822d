"""Usual and impossible values, and header words of loggers, that a new register starts with."""

import tomllib
from pathlib import Path

from django.db import transaction

from process.models import HeaderWord, Range

RANGES = Path(__file__).with_name("ranges.toml")
HEADER_WORDS = Path(__file__).with_name("header_words.toml")


def ensure_ranges(**_signal: object) -> None:
    """Fill an empty table; one that the museum has begun to edit is never touched."""
    if Range.objects.exists():
        return
    with transaction.atomic():
        for row in tomllib.loads(RANGES.read_text(encoding="utf-8"))["range"]:
            Range.objects.create(**row)


def ensure_header_words(**_signal: object) -> None:
    """Fill an empty list, as above."""
    if HeaderWord.objects.exists():
        return
    with transaction.atomic():
        for meaning, words in tomllib.loads(HEADER_WORDS.read_text(encoding="utf-8")).items():
            for word in words:
                HeaderWord.objects.create(meaning=meaning, word=word)
