"""A thing is not older than what it was made from."""

from collections.abc import Iterable, Mapping
from datetime import date
from typing import NamedTuple

from records.descent.links import DescentError, Key, Link
from records.descent.order import by_source, oldest_first


class Span(NamedTuple):
    """Earliest and latest day on which a thing can have been made; None where open."""

    earliest: date | None = None
    latest: date | None = None


def _too_old(bound: tuple[date, Key], made: Span, target: Key) -> DescentError:
    earliest, source = bound
    return DescentError(
        f"{target} was made by {made.latest}, but {source}, from which it descends, not before {earliest}. "
        "A copy cannot be older than its model: mend one of the dates, or the link."
    )


def refuse_impossible(links: Iterable[Link], made: Mapping[Key, Span]) -> None:
    """Raise DescentError for a ring, or for a target that must be older than any of its forebears.

    Undated things between do not hide the contradiction: the earliest possible day is handed down the chain.
    """
    links = list(links)
    out = by_source(links)
    bounds: dict[Key, tuple[date, Key]] = {}
    for key in oldest_first(links):
        span = made.get(key, Span())
        bound = bounds.get(key)
        if bound and span.latest and span.latest < bound[0]:
            raise _too_old(bound, span, key)
        if span.earliest and (bound is None or span.earliest > bound[0]):
            bound = (span.earliest, key)
        if bound:
            for link in out.get(key, ()):
                bounds[link.target] = max(bounds.get(link.target, bound), bound, key=lambda pair: pair[0])
