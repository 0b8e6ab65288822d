"""What must be true before the next step: computed from facts, passed by evidence or by a named concession."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date
from typing import Any

from records import extensions
from records.models import Concession, Gate, Item, UnmetGate


@dataclass(frozen=True)
class Check:
    """One condition of a gate: the evidence in a sentence, or what is missing and who can supply it."""

    name: str
    met: bool
    sentence: str
    ask: str = ""
    concession: str = ""

    @property
    def state(self) -> str:
        if self.concession:
            return "look"
        return "done" if self.met else "blocked"


@dataclass(frozen=True)
class Subject:
    """What stands before a gate: the thing itself, its number, and the items that a concession must name."""

    thing: Any
    number: str
    items: tuple[Item, ...]


class GateClosed(Exception):
    """Work may not start: the checks that are not met."""

    def __init__(self, gate: str, unmet: list[Check]):
        self.gate, self.unmet = gate, unmet
        super().__init__(" ".join(check.sentence for check in unmet))


def gate_check(gate: str) -> Callable:
    """Register a check: a function of (subject, day) that answers a Check, or None where it does not apply."""

    def register(function: Callable[[Subject, date], Check | None]) -> Callable:
        extensions.gate_checks.setdefault(gate, []).append(function)
        return function

    return register


def checks(gate: str, subject: Subject, on: date) -> list[Check]:
    """Every check of a gate; an unmet one shows the concession that lets it pass."""
    found = [check for function in extensions.gate_checks.get(gate, ()) if (check := function(subject, on))]
    if all(check.met for check in found):
        return found
    passing = _concession(gate, subject)
    return found if passing is None else [c if c.met else _passed(c, passing) for c in found]


def _passed(check: Check, concession: Concession) -> Check:
    words = f"{concession.number}, {concession.given_by}, {concession.given_role}: {concession.reason}"
    return Check(check.name, True, check.sentence, check.ask, words)


def _concession(gate: str, subject: Subject) -> Concession | None:
    """The latest concession for this gate that names the thing or one of its pieces."""
    named = {c.pk: c for item in subject.items for c in item.concessions.all() if c.gate == gate}
    return max(named.values(), key=lambda concession: concession.given_on, default=None)


def unmet(gate: str, subject: Subject, on: date) -> list[Check]:
    return [check for check in checks(gate, subject, on) if not check.met]


def pass_gates(gates: Iterable[str], subject: Subject, on: date, *, afterwards: bool) -> list[UnmetGate]:
    """Start now: raise GateClosed where a check is unmet. Record what has happened: keep the unmet checks for ever."""
    kept = []
    for gate in gates:
        missing = unmet(gate, subject, on)
        if missing and not afterwards:
            raise GateClosed(gate, missing)
        kept += [_keep_unmet(gate, check, subject, on) for check in missing]
    return kept


def pass_check(gate: str, check: Check, subject: Subject, on: date, *, afterwards: bool) -> None:
    """One check of a gate by itself, where a step stands before no other of that gate."""
    if check.met or _concession(gate, subject):
        return
    if not afterwards:
        raise GateClosed(gate, [check])
    _keep_unmet(gate, check, subject, on)


def _keep_unmet(gate: str, check: Check, subject: Subject, on: date) -> UnmetGate:
    row = UnmetGate.objects.create(
        gate=gate, check_name=check.name, sentence=check.sentence, subject_number=subject.number, happened_on=on
    )
    row.items.set(subject.items)
    return row


def label_of(gate: str) -> str:
    return Gate(gate).label
