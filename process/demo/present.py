"""Turning “three hours ago” into an instant, once, before anything holds the clock."""

from datetime import datetime, timedelta
from typing import Any

from django.utils import timezone

INSTANTS, DATES = ("when", "at", "judged"), ("needed_by", "valid_from", "valid_to", "due_on")


def settled(value: Any, now: datetime, key: str = "") -> Any:
    """The tables with every instant in hours and every date in days put at its place before or after now."""
    if isinstance(value, dict):
        return {name: settled(nested, now, name) for name, nested in value.items()}
    if isinstance(value, list):
        return [settled(nested, now, key) for nested in value]
    if not isinstance(value, int | float) or isinstance(value, bool):
        return value
    if key in INSTANTS or key.endswith("_at"):
        return now.replace(second=0, microsecond=0) + timedelta(hours=value)
    if key in DATES or key.endswith("_on"):
        return timezone.localdate(now) + timedelta(days=value)
    return value
