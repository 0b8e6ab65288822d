"""What a new register starts with: usual and impossible values, header words of loggers, the interruption rule."""

import tomllib
from pathlib import Path

from django.db import transaction

from process.models import CareRule, HeaderWord, Range, RiskRule

RANGES = Path(__file__).with_name("ranges.toml")
HEADER_WORDS = Path(__file__).with_name("header_words.toml")
CARE_RULES = Path(__file__).with_name("care_rules.toml")
RISK_RULES = Path(__file__).with_name("risk_rules.toml")


def ensure_ranges(**_signal: object) -> None:
    """Add the rows that are missing; one that is there, and may have been edited, is never touched."""
    there = set(Range.objects.values_list("field", "step"))
    with transaction.atomic():
        for row in tomllib.loads(RANGES.read_text(encoding="utf-8"))["range"]:
            if (row["field"], row.get("step", Range.Step.ANY)) not in there:
                Range.objects.create(**row)


def ensure_risk_rules(**_signal: object) -> None:
    _fill(RiskRule, RISK_RULES, "rule")


def ensure_care_rules(**_signal: object) -> None:
    _fill(CareRule, CARE_RULES, "rule")


def _fill(model: type, file: Path, name: str) -> None:
    if model.objects.exists():
        return
    with transaction.atomic():
        for row in tomllib.loads(file.read_text(encoding="utf-8"))[name]:
            model.objects.create(**row)


def ensure_header_words(**_signal: object) -> None:
    """Fill an empty list, as above."""
    if HeaderWord.objects.exists():
        return
    with transaction.atomic():
        for meaning, words in tomllib.loads(HEADER_WORDS.read_text(encoding="utf-8")).items():
            for word in words:
                HeaderWord.objects.create(meaning=meaning, word=word)
