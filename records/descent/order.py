"""Walking the links without recursion, so that a long chain is no deeper than a short one."""

from collections import defaultdict
from collections.abc import Iterable
from graphlib import CycleError, TopologicalSorter

from records.descent.links import DescentError, Key, Link


def by_target(links: Iterable[Link]) -> dict[Key, list[Link]]:
    """The links that lead into each thing."""
    into: dict[Key, list[Link]] = defaultdict(list)
    for link in links:
        into[link.target].append(link)
    return into


def by_source(links: Iterable[Link]) -> dict[Key, list[Link]]:
    """The links that lead out of each known thing."""
    out: dict[Key, list[Link]] = defaultdict(list)
    for link in links:
        if link.source is not None:
            out[link.source].append(link)
    return out


def ancestry(links: Iterable[Link], key: Key) -> list[Link]:
    """Only the links that lead to `key`, near or far, in the order given."""
    links = list(links)
    into = by_target(links)
    seen, waiting = {key}, [key]
    while waiting:
        before = {link.source for link in into.get(waiting.pop(), ()) if link.source is not None}
        waiting.extend(before - seen)
        seen |= before
    return [link for link in links if link.target in seen]


def oldest_first(links: Iterable[Link]) -> list[Key]:
    """Every thing named by the links, each after all it was made from; a ring is refused."""
    sorter: TopologicalSorter[Key] = TopologicalSorter()
    for link in links:
        sorter.add(link.target, *([] if link.source is None else [link.source]))
    try:
        return list(sorter.static_order())
    except CycleError as error:
        # graphlib lists the ring against the arrows, its first thing repeated at the end.
        ring = " → ".join(str(key) for key in error.args[1])
        raise DescentError(
            f"These things would be made from themselves: {ring}. One of the links is wrong; take it out."
        ) from error
