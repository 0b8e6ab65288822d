"""The rules that marks are held against: those that came with the register, and the museum's own rows."""

from collections.abc import Callable, Sequence
from contextvars import ContextVar
from dataclasses import replace
from typing import Any, TypeVar

from django.core.signals import request_finished, request_started
from django.db.models import Value
from django.db.models.signals import post_save
from django.dispatch import receiver

from records import marking
from records.marking import Rule
from records.models import MarkRule, RuleCheck
from records.riding import as_json, read_rows

T = TypeVar("T")

CHECKED = ("code", "checked_on", "text_version", "confirmed")
ASKED = (
    "code", "asks", "jurisdiction", "citation", "text_version", "evidence", "checked_on", "question", "words",
    "at_least_mm", "share_of", "share", "classes", "gate",
)  # fmt: skip


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
_memo: ContextVar[dict[str, Any] | None] = ContextVar("rules on marks", default=None)


@receiver(request_started)
def _begin(**_signal: Any) -> None:
    _memo.set({})


@receiver(post_save, sender=MarkRule)
@receiver(post_save, sender=RuleCheck)
def _forget(**_signal: Any) -> None:
    if _memo.get() is not None:
        _memo.set({})


@receiver(request_finished)
def _end(**_signal: Any) -> None:
    _memo.set(None)


def recorded_rules() -> list[Rule]:
    """Those that came with the register, each with the day on which the museum last compared its text."""
    checks = {row.code: row for row in _once("tables", _tables)[0]}
    return [_compared(rule, checks[rule.id]) if rule.id in checks else rule for rule in marking.load_rules()]


def _compared(rule: Rule, row: RuleCheck) -> Rule:
    """Text that was read and agrees is no longer from memory; where it differs, the rule stays doubtful."""
    read = replace(rule, checked_on=row.checked_on, text_version=row.text_version)
    if not row.confirmed:
        return replace(read, evidence="from memory")
    return replace(read, evidence="seen", share_evidence="seen" if rule.share_evidence else "")


def gate_rules() -> Sequence[Rule]:
    """Those that a mark must pass before the gate opens; of the recorded ones only the museum's own policy is asked."""
    return [rule for rule in [*marking.load_rules(), *own_rules()] if rule.gate]


def all_rules() -> Sequence[Rule]:
    """The recorded rules, then the museum's own that are still asked."""
    return _once("all", lambda: [*recorded_rules(), *own_rules()])


def own_rules() -> Sequence[Rule]:
    return _once("own", lambda: [rule_of(row) for row in _once("tables", _tables)[1]])


def _tables() -> tuple[list[RuleCheck], list[MarkRule]]:
    """What the museum compared, and the rules of its own that are still asked, by one question."""
    checks = RuleCheck.objects.order_by().values_list(Value("check"), as_json(CHECKED))
    own = MarkRule.objects.order_by().filter(is_retired=False).values_list(Value("own"), as_json(ASKED))
    found: dict[str, list[dict[str, Any]]] = {"check": [], "own": []}
    for table, values in checks.union(own, all=True):
        found[table].append(values)
    rules = read_rows(MarkRule, found["own"])
    return read_rows(RuleCheck, found["check"]), sorted(rules, key=lambda row: row.code)


def _once(name: str, read: Callable[[], T]) -> T:
    memo = _memo.get()
    if memo is None:
        return read()
    if name not in memo:
        memo[name] = read()
    return memo[name]
