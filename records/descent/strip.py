"""The descent strip: columns of things from the oldest on the left to one thing on the right."""

from collections.abc import Iterable
from dataclasses import dataclass

from records.descent.lineage import Lineage, trace_all
from records.descent.links import TRANSFERS, Key, Link
from records.descent.order import ancestry, oldest_first


@dataclass(frozen=True)
class Edge:
    """One arrow; a `source` of None starts at a question mark."""

    source: Key | None
    target: Key
    transfer: str
    words: str
    side: str = ""


@dataclass(frozen=True)
class Strip:
    """`columns` hold keys, None standing for “not known”; `lineages` has an entry for each known key."""

    columns: tuple[tuple[Key | None, ...], ...]
    edges: tuple[Edge, ...]
    lineages: dict[Key, Lineage]

    def between(self, index: int) -> tuple[Edge, ...]:
        """The arrows that end in one column (for a strip that writes them between the columns)."""
        return tuple(edge for edge in self.edges if edge.target in self.columns[index])


def edge_of(link: Link) -> Edge:
    return Edge(link.source, link.target, link.transfer, TRANSFERS[link.transfer].words, link.side)


def _ranks(links: list[Link], order: list[Key]) -> dict[Key, int]:
    """Each thing one column right of the furthest thing it was made from; an unknown model takes column 0."""
    ranks = dict.fromkeys(order, 0)
    place = {key: index for index, key in enumerate(order)}
    for link in sorted(links, key=lambda link: place[link.target]):
        before = 0 if link.source is None else ranks[link.source]
        ranks[link.target] = max(ranks[link.target], before + 1)
    return ranks


def strip(links: Iterable[Link], key: Key) -> Strip:
    """Everything `key` was made from, in columns, with the arrows between."""
    mine = ancestry(links, key)
    ranks = _ranks(mine, oldest_first(mine) or [key])
    columns: list[list[Key | None]] = [[] for _ in range(max(ranks.values()) + 1)]
    named = dict.fromkeys(end for link in mine for end in (link.source, link.target) if end is not None)
    for thing in named or [key]:
        columns[ranks[thing]].append(thing)
    for link in mine:
        if link.source is None:
            columns[ranks[link.target] - 1].append(None)
    edges = sorted((edge_of(link) for link in mine), key=lambda edge: (ranks[edge.target], edge.side))
    return Strip(tuple(map(tuple, columns)), tuple(edges), trace_all(mine) or {key: Lineage(path=(key,))})
