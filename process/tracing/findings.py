"""What a file says against itself, and what a person may decide about it."""

from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

SHOWN_LINES = 20
MOST_OF_A_KIND = 12  # more than these are decided together


@dataclass(frozen=True)
class Choice:
    """`charge_ah` is the trace's charge if this is chosen and all else stays; filled in by the argument."""

    key: str
    label: str
    charge_ah: float | None = None
    effect_ah: float | None = None


@dataclass(frozen=True)
class Finding:
    """`default` is empty where nobody but a person can decide; `indices` point into the samples in time order."""

    key: str
    kind: str
    sentence: str
    choices: tuple[Choice, ...]
    default: str = ""
    lines: tuple[int, ...] = ()
    count: int = 1
    from_s: float | None = None
    to_s: float | None = None
    indices: NDArray[np.intp] = field(default_factory=lambda: np.empty(0, dtype=np.intp), compare=False, repr=False)
    number: float = 0.0  # what the choice works with: a factor, a shift in seconds

    def as_json(self) -> dict[str, Any]:
        """As it is kept beside the decisions; the samples stay in the file."""
        return {
            "key": self.key, "kind": self.kind, "sentence": self.sentence, "default": self.default,
            "lines": list(self.lines), "count": self.count, "from_s": self.from_s, "to_s": self.to_s,
            "choices": [
                {"key": c.key, "label": c.label, "charge_ah": c.charge_ah, "effect_ah": c.effect_ah}
                for c in self.choices
            ],
        }  # fmt: skip


def decided(finding: Finding, decisions: dict[str, str]) -> str:
    """The choice that holds: the person's, or the default; empty while one is still to be made."""
    asked = decisions.get(finding.key, "")
    return asked if any(choice.key == asked for choice in finding.choices) else finding.default
