"""What was transferred to what, and how."""

from collections.abc import Hashable
from dataclasses import dataclass

Key = Hashable


class DescentError(ValueError):
    """A chain that cannot be: a ring, or a thing older than what it was made from."""


@dataclass(frozen=True)
class Transfer:
    """One way of getting from a thing to the next, with the surface transfers it stands for.

    An odd count flips the polarity. A step nobody described stands for a mould and a deposit at the least.
    """

    key: str
    words: str
    count: int
    skins: bool = False
    by_scan: bool = False

    @property
    def flips(self) -> bool:
        return self.count % 2 == 1

    @property
    def vague(self) -> bool:
        return self.key == UNKNOWN


UNKNOWN = "unknown"


TRANSFERS: dict[str, Transfer] = {
    transfer.key: transfer
    for transfer in (
        Transfer("moulding", "moulded", count=1),
        Transfer("casting", "cast", count=1),
        Transfer("deposit_in_mould", "deposited in the mould", count=1),
        Transfer("skin", "covered with a metal skin", count=0, skins=True),
        Transfer("making_up", "made up", count=0),
        Transfer("scan", "scanned", count=0, by_scan=True),
        Transfer("print", "printed from the scan", count=0, by_scan=True),
        Transfer(UNKNOWN, "copied in a way not recorded", count=2),
    )
}


@dataclass(frozen=True)
class Link:
    """One step of descent; `source` is None where nobody knows what the thing was made from."""

    source: Key | None
    target: Key
    transfer: str
    side: str = ""

    def __post_init__(self) -> None:
        if self.transfer not in TRANSFERS:
            raise DescentError(f"“{self.transfer}” is no known way of transfer. Choose one of: {', '.join(TRANSFERS)}.")
        if self.source is None and self.target is None:
            raise DescentError("A link needs the thing that was made. Name it.")

    @property
    def how(self) -> Transfer:
        return TRANSFERS[self.transfer]
