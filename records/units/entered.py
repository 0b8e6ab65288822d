"""The digits of a number that a person wrote: they are the evidence, and stay as they are."""

import re
from collections.abc import Mapping
from typing import Any

from records.units.choices import unit_choice

# A plain number, with its ± or its unit behind it; an exponent or a thousands mark is no count of decimals.
PLAIN = re.compile(r"\s*[-+\u2212]?\d+(?:[.,](\d+))?(?:\s*±.*|\s*[^\d\s.,eE].*)?")
MOST = 6


def decimals_written(typed: Mapping[str, Any], suffix: str) -> int | None:
    """As many decimals as were written for the number or its ±, if it was written in the column's own unit.

    >>> decimals_written({"text": "44,3", "unit": "g"}, "_g"), decimals_written({"text": "2.3", "unit": "in"}, "_mm")
    (1, None)
    >>> decimals_written({"text": "58.4", "unit": "mm", "plus_minus": 0.02}, "_mm")
    2
    """
    found = PLAIN.fullmatch(str(typed.get("text") or ""))
    if not found or typed.get("unit") != unit_choice(suffix, None).symbol:
        return None
    spread = typed.get("plus_minus")
    behind = f"{spread:.{MOST}f}".rstrip("0").partition(".")[2] if spread else ""
    return min(MOST, max(len(found[1] or ""), len(behind)))
