"""The gates of a commission or of one thing, as a table of facts: what stands, what is missing, who can supply it."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from typing import Any

from django.db.models import Exists, OuterRef, Q

from records import checks, extensions, gates
from records.gates import Check, Subject
from records.models import Commission, Gate, Item
from records.mouldings import mouldings_of, with_mouldings
from records.original_marks import keep_foreseen, with_foreseen

OF_ORIGINAL = (Gate.PERMISSION, Gate.RISK, Gate.BEFORE, Gate.AFTER)
OF_COPY = (Gate.MARK, Gate.ACCEPT, Gate.IDENTIFY)


@dataclass(frozen=True)
class GateLine:
    gate: str
    label: str
    item: Any  # the thing, or the run, that stands before it
    checks: list[Check]

    @property
    def state(self) -> str:
        states = {check.state for check in self.checks}
        return next((state for state in ("blocked", "look", "open") if state in states), "done")


def lines_of(item: Item, on: date, which: Iterable[str]) -> list[GateLine]:
    """The gates that stand before one thing."""
    subject = Subject(item, item.number, (item,))
    found = [(gate, gates.checks(gate, subject, on)) for gate in which]
    return [GateLine(gate, Gate(gate).label, item, checks) for gate, checks in found if checks]


def pieces_of(commission: Commission) -> list[Item]:
    """The originals and the copies of a commission, with all that their gates read.

    `was_made` tells the copies; `moulded_on` is when the piece was first moulded after the request.
    """
    mine = Q(commissions=commission) | Q(made_for=commission)
    made = Commission.copies.through.objects.filter(commission=commission, item=OuterRef("pk"))
    rows = with_mouldings(Item.objects.filter(mine).annotate(was_made=Exists(made)))
    rows = rows.annotate(**{name: column() for name, column in extensions.gate_columns.items()})
    rows = with_foreseen(rows.select_related("label__signed_by")).distinct()
    pieces = list(rows.prefetch_related(*checks.RELATED, *extensions.gate_related))
    for piece in pieces:
        keep_foreseen(piece)
        days = [link.happened_on for link in mouldings_of(piece)]
        piece.moulded_on = min((day for day in days if day >= commission.requested_on), default=None)
    return pieces


def gates_of(pieces: list[Item], today: date) -> list[GateLine]:
    """Permission to condition for each original, as of its moulding or of today; mark to label for each copy."""
    return [line for piece in pieces for line in _lines_in_commission(piece, today)]


def _lines_in_commission(piece: Item, today: date) -> list[GateLine]:
    if piece.was_made:
        return lines_of(piece, today, OF_COPY)
    return lines_of(piece, piece.moulded_on or today, OF_ORIGINAL)
