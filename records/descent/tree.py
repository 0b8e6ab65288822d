"""The descent tree beneath one thing, as rows: x is the depth, y is the row."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from records.descent.links import Key, Link
from records.descent.order import by_source, oldest_first

OPEN_END = -1  # the parent of a row that still has to get its open end


@dataclass(frozen=True)
class Row:
    """One place in the tree.

    A piece joined from two shells hangs beneath both: its second place is `repeated` and carries no branches.
    `parent` is the index of the row it hangs from, None for a root; `key` is None for an open end.
    """

    key: Key | None
    depth: int
    parent: int | None
    words: str = ""
    side: str = ""
    repeated: bool = False


def tree(links: Iterable[Link], *roots: Key) -> list[Row]:
    """All that came from the roots, nearest first, in the order of the links.

    A root whose own model nobody knows hangs from a row without a key: an open end.
    """
    links = list(links)
    oldest_first(links)  # refuses a ring before the walk could run round it
    out = by_source(links)
    rows: list[Row] = []
    seen: set[Key] = set()
    waiting = _beginnings(links, roots)
    while waiting:
        row = waiting.pop()
        index = len(rows)
        if row.parent == OPEN_END:
            rows.append(Row(None, 0, None))
            row, index = replace(row, parent=index), index + 1
        if row.key in seen:
            rows.append(replace(row, repeated=True))
            continue
        seen.add(row.key)
        rows.append(row)
        branches = [Row(link.target, row.depth + 1, index, link.how.words, link.side) for link in out.get(row.key, ())]
        waiting.extend(reversed(branches))
    return rows


def _beginnings(links: list[Link], roots: Iterable[Key]) -> list[Row]:
    """The roots in reverse, for a stack; one with an unknown model is marked to hang from an open end."""
    unknown = {link.target: link.how.words for link in links if link.source is None}
    found = [Row(root, 1, OPEN_END, unknown[root]) if root in unknown else Row(root, 0, None) for root in roots]
    return list(reversed(found))
