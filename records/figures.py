"""A figure as pages and papers show it: a number with its unit, its kind of evidence, its ± and its working."""

from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True)
class Figure:
    """`value` and `plus_minus` are in the unit that `suffix` names (records.units.SUFFIXES)."""

    label: str
    value: float | None
    suffix: str
    kind: str = "calculated"
    plus_minus: float | None = None
    note: str = ""
    target: float | None = None
    working: Any = None
