"""The descent tree beneath one thing, as rows: x is the depth, y is the row."""

from collections.abc import Iterable
from dataclasses import dataclass

from records.descent.links import Key, Link
from records.descent.order import by_source, oldest_first


@dataclass(frozen=True)
class Row:
    """One place in the tree.

    A piece joined from two shells hangs beneath both: its second place is `repeated` and carries no branches.
    `parent` is the index of the row it hangs from, None for the root.
    """

    key: Key
    depth: int
    parent: int | None
    words: str = ""
    side: str = ""
    repeated: bool = False


def tree(links: Iterable[Link], root: Key) -> list[Row]:
    """All that came from `root`, nearest first, in the order of the links."""
    links = list(links)
    oldest_first(links)  # refuses a ring before the walk could run round it
    out = by_source(links)
    rows: list[Row] = []
    seen: set[Key] = set()
    waiting: list[Row] = [Row(root, 0, None)]
    while waiting:
        row = waiting.pop()
        index = len(rows)
        if row.key in seen:
            rows.append(Row(row.key, row.depth, row.parent, row.words, row.side, repeated=True))
            continue
        seen.add(row.key)
        rows.append(row)
        branches = [Row(link.target, row.depth + 1, index, link.how.words, link.side) for link in out.get(row.key, ())]
        waiting.extend(reversed(branches))
    return rows
