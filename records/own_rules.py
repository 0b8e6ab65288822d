"""The rules that marks are held against: those that came with the register, and the museum's own rows."""

from collections.abc import Sequence
from contextvars import ContextVar
from typing import Any

from django.core.signals import request_finished, request_started
from django.db.models.signals import post_save
from django.dispatch import receiver

from records import marking
from records.marking import Rule
from records.models import MarkRule


def rule_of(row: MarkRule) -> Rule:
    """A museum's own rule in the shape of the recorded ones."""
    entry: dict[str, Any] = {
        "id": row.code, "asks": row.asks, "jurisdiction": row.jurisdiction, "citation": row.citation,
        "text_version": row.text_version, "evidence": row.evidence, "checked_on": row.checked_on, "check": row.question,
        "gate": row.gate, "classes": listed(row.classes.lower()), "at_least_mm": row.at_least_mm or 0.0,
    }  # fmt: skip
    words = listed(row.words)
    entry |= {"word": words[0], "words": [word.upper() for word in words]} if words else {}
    entry |= {"or_share_of": row.share_of, "share": row.share} if row.share_of and row.share else {}
    return marking.read_rule(entry)


def listed(words: str) -> list[str]:
    return [word.strip() for word in words.split(",") if word.strip()]


# Within one request the rules are asked of the database once, however many copies a page judges.
_memo: ContextVar[list[Rule] | None] = ContextVar("rules on marks", default=None)


@receiver(request_started)
def _begin(**_signal: Any) -> None:
    _memo.set([])


@receiver(post_save, sender=MarkRule)
def _forget(**_signal: Any) -> None:
    if _memo.get() is not None:
        _memo.set([])


@receiver(request_finished)
def _end(**_signal: Any) -> None:
    _memo.set(None)


def all_rules() -> Sequence[Rule]:
    """The recorded rules, then the museum's own that are still asked."""
    memo = _memo.get()
    if memo:
        return memo
    rules = [*marking.load_rules(), *map(rule_of, MarkRule.objects.filter(is_retired=False))]
    if memo is not None:
        memo.extend(rules)
    return rules
