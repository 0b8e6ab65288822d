"""The nine categories of Object ID (International Council of Museums, 1997 onward) and which of them are missing."""

from collections.abc import Collection
from dataclasses import dataclass
from typing import Any

from records.models import Item

# The workshop's own things are told from each other by what they were taken from, not by this.
DESCRIBED = {Item.Kind.ORIGINAL, Item.Kind.HISTORIC_COPY, Item.Kind.CAST, Item.Kind.COPY}

CATEGORIES = (
    ("type of object", "object_type"), ("materials and techniques", "materials"), ("measurements", ""),
    ("inscriptions and markings", "inscriptions"), ("distinguishing features", "features"), ("title", "title"),
    ("subject", "subject"), ("date or period", "date_words"), ("maker", "maker"),
)  # fmt: skip


@dataclass(frozen=True)
class Completeness:
    missing: tuple[str, ...]

    @property
    def recorded_count(self) -> int:
        return len(CATEGORIES) - len(self.missing)

    @property
    def sentence(self) -> str:
        if not self.missing:
            return "All nine categories of Object ID are recorded."
        recorded = f"{self.recorded_count} of {len(CATEGORIES)} categories recorded"
        return f"Object ID: {recorded}; missing: {', '.join(self.missing)}."


def completeness(item: Item, *, measurements: Collection[Any], marks: Collection[Any]) -> Completeness | None:
    """What of the nine is missing; None for a thing of the workshop. A mark counts as an inscription."""
    if item.kind not in DESCRIBED:
        return None
    by_rows = {"measurements": measurements, "inscriptions and markings": item.inscriptions.strip() or marks}
    return Completeness(
        tuple(name for name, field in CATEGORIES if not by_rows.get(name, field and getattr(item, field).strip()))
    )
