"""The gates of a commission or of one thing, as a table of facts: what stands, what is missing, who can supply it."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from records import gates
from records.gates import Check, Subject
from records.models import Commission, Gate, Item

OF_ORIGINAL = (Gate.PERMISSION, Gate.RISK, Gate.BEFORE, Gate.AFTER)
OF_COPY = (Gate.MARK, Gate.ACCEPT, Gate.IDENTIFY)


@dataclass(frozen=True)
class GateLine:
    gate: str
    label: str
    item: Item
    checks: list[Check]

    @property
    def state(self) -> str:
        states = {check.state for check in self.checks}
        return "blocked" if "blocked" in states else "look" if "look" in states else "done"


def lines_of(item: Item, on: date, which: Iterable[str]) -> list[GateLine]:
    """The gates that stand before one thing."""
    subject = Subject(item, item.number, (item,))
    found = [(gate, gates.checks(gate, subject, on)) for gate in which]
    return [GateLine(gate, Gate(gate).label, item, checks) for gate, checks in found if checks]


def item_gates(item: Item, on: date) -> list[GateLine]:
    return lines_of(item, on, OF_COPY if item.made_here else OF_ORIGINAL)


def commission_gates(commission: Commission, on: date) -> list[GateLine]:
    """Permission to condition for each original, mark to label for each copy."""
    originals = [line for item in commission.originals.all() for line in lines_of(item, on, OF_ORIGINAL)]
    return originals + [line for copy in commission.copies.all() for line in lines_of(copy, on, OF_COPY)]
