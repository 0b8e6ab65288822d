"""Every route of the site, however deep it is included."""

from collections.abc import Iterator
from typing import Any

from django.urls import URLPattern, get_resolver


def routes() -> dict[str, URLPattern]:
    """Every route of the site by its name."""
    return {pattern.name: pattern for pattern in _walk(get_resolver().url_patterns)}


def _walk(patterns: list[Any]) -> Iterator[URLPattern]:
    for pattern in patterns:
        if isinstance(pattern, URLPattern):
            yield pattern
        else:
            yield from _walk(pattern.url_patterns)
