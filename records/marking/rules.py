"""Reading the rule files."""

import tomllib
from dataclasses import dataclass, field, fields
from datetime import date
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

OWN_RULES = Path(__file__).with_name("rules.toml")
EVIDENCE = ("seen", "from memory")


@dataclass(frozen=True)
class Rule:
    """One requirement, where it comes from, and how sure we are of its text."""

    id: str
    jurisdiction: str
    citation: str
    text_version: str
    evidence: str
    check: str
    asks: str
    checked_on: date | None = None
    gate: bool = False
    classes: tuple[str, ...] = ()
    metals: tuple[str, ...] = ()
    technique: str = ""
    excused_by: tuple[tuple[str, ...], ...] = ()
    limits: dict[str, float] = field(default_factory=dict)
    rows: tuple[tuple[float, ...], ...] = ()
    word: str = ""
    words: tuple[str, ...] = ()
    at_least_mm: float = 0.0
    or_share_of: str = ""
    share: Fraction = Fraction(1)
    share_evidence: str = ""

    @property
    def source(self) -> str:
        """Citation with version and evidence, as it stands under a verdict."""
        day = self.checked_on
        checked = f", checked {day.day} {day:%B %Y}" if day else ""
        return f"{self.citation} ({self.text_version}{checked}; {self.evidence})"


def read_rule(row: dict[str, Any]) -> Rule:
    """A rule from its table; one that cannot be understood is refused."""
    if unknown := row.keys() - {entry.name for entry in fields(Rule)}:
        raise ValueError(f"Rule {row.get('id', '?')} has entries that mean nothing here: {', '.join(sorted(unknown))}.")
    if row.get("evidence") not in EVIDENCE:
        raise ValueError(f"Rule {row.get('id', '?')} must say its evidence: {' or '.join(EVIDENCE)}.")
    lists: dict[str, Any] = {name: tuple(row[name]) for name in ("classes", "metals", "words") if name in row}
    rows: dict[str, Any] = {name: tuple(map(tuple, row[name])) for name in ("rows", "excused_by") if name in row}
    share: dict[str, Any] = {"share": Fraction(row["share"])} if "share" in row else {}
    return Rule(**{**row, **lists, **rows, **share})


@cache
def load_rules(path: Path = OWN_RULES) -> tuple[Rule, ...]:
    """The rules of one file, in its order."""
    return tuple(read_rule(row) for row in tomllib.loads(path.read_text(encoding="utf-8"))["rule"])
