"""Polarity, transfers and generation of one thing, followed through every step it came by."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from records.descent.links import Key, Link
from records.descent.order import ancestry, by_target, oldest_first


@dataclass(frozen=True)
class Lineage:
    """Where a thing stands in its chain.

    `polarity` is +1 for a positive, −1 for a negative, None where joined parts disagree.
    With `at_least` the counts are lower bounds, because some first link is undocumented.
    """

    polarity: int | None = 1
    transfer_count: int = 0
    generation: int = 0
    at_least: bool = False
    skinned: bool = False
    by_scan: bool = False
    open_ends: tuple[Key, ...] = ()
    path: tuple[Key | None, ...] = ()

    @property
    def is_copy(self) -> bool:
        return self.generation > 0 and self.polarity == 1


# What must at the very least have stood before a thing whose model nobody knows.
_PRESUMED_POSITIVE = Lineage()
_PRESUMED_MOULD = Lineage(polarity=-1, transfer_count=1)
_PRESUMED_COPY = Lineage(transfer_count=2, generation=1)
_PRESUMED = {
    "moulding": _PRESUMED_POSITIVE,
    "scan": _PRESUMED_POSITIVE,
    "print": _PRESUMED_POSITIVE,
    "unknown": _PRESUMED_POSITIVE,
    "casting": _PRESUMED_MOULD,
    "deposit_in_mould": _PRESUMED_MOULD,
    "skin": _PRESUMED_COPY,
    "making_up": _PRESUMED_COPY,
}


def _presumed(link: Link) -> Lineage:
    return replace(_PRESUMED[link.transfer], at_least=True, open_ends=(link.target,), path=(None,))


def _positives(link: Link, polarity: int | None) -> int:
    """One positive for a cast or deposit in a negative, and for a copying nobody described; else none."""
    if link.how.vague:
        return 1
    return 1 if link.how.flips and polarity == 1 else 0


def _step(before: Lineage, link: Link) -> Lineage:
    """The lineage of the link's target, seen through this link alone."""
    polarity = before.polarity
    if link.how.flips and polarity is not None:
        polarity = -polarity
    vague_end = (link.target,) if link.how.vague and link.source is not None else ()
    return replace(
        before,
        polarity=polarity,
        transfer_count=before.transfer_count + link.how.count,
        generation=before.generation + _positives(link, polarity),
        at_least=before.at_least or link.how.vague,
        # A mould taken from a skinned core copies its surface: what follows is not skinned itself.
        skinned=link.how.skins or (before.skinned and not link.how.count),
        open_ends=before.open_ends + vague_end,
        by_scan=before.by_scan or link.how.by_scan,
        path=(*before.path, link.target),
    )


def _join(parts: list[Lineage]) -> Lineage:
    """Parts joined into one thing: the worst of each, and the path of the furthest part."""
    if len(parts) == 1:
        return parts[0]
    furthest = max(parts, key=lambda part: (part.generation, part.transfer_count, part.at_least))
    polarities = {part.polarity for part in parts}
    return Lineage(
        polarity=polarities.pop() if len(polarities) == 1 else None,
        transfer_count=max(part.transfer_count for part in parts),
        generation=max(part.generation for part in parts),
        at_least=any(part.at_least for part in parts),
        skinned=any(part.skinned for part in parts),
        by_scan=any(part.by_scan for part in parts),
        open_ends=tuple(dict.fromkeys(end for part in parts for end in part.open_ends)),
        path=furthest.path,
    )


def trace_all(links: Iterable[Link]) -> dict[Key, Lineage]:
    """The lineage of every thing that the links name."""
    links = list(links)
    into = by_target(links)
    known: dict[Key, Lineage] = {}
    for key in oldest_first(links):
        steps = [
            _step(_presumed(link) if link.source is None else known[link.source], link) for link in into.get(key, ())
        ]
        known[key] = _join(steps) if steps else Lineage(path=(key,))
    return known


def trace(links: Iterable[Link], key: Key) -> Lineage:
    """The lineage of one thing; without a link to it, it is an original.

    >>> chain = [Link("medal", "mould", "moulding", "obverse"), Link("mould", "shell", "deposit_in_mould")]
    >>> found = trace(chain, "shell")
    >>> found.polarity, found.transfer_count, found.generation
    (1, 2, 1)
    """
    return trace_all(ancestry(links, key)).get(key, Lineage(path=(key,)))
