"""What must be true before the next step: computed from facts, passed by evidence or by a named concession."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
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
    gate: str = ""
    is_recorded: bool = False  # it was not met when the step was taken, and is kept as such for ever
    is_ahead: bool = False  # the step that asks it has not come yet

    @property
    def state(self) -> str:
        if self.is_ahead:
            return "open"
        if self.concession or (self.is_recorded and not self.met):
            return "look"
        return "done" if self.met else "blocked"


@dataclass(frozen=True)
class Subject:
    """What stands before a gate: the thing itself, its number, and the items that a concession must name.

    `act` says what the step is about to do (records.consents.Act), where conditions of a consent are asked of it.
    """

    thing: Any
    number: str
    items: tuple[Item, ...]
    act: Any = None


class GateClosed(Exception):
    """Work may not start: the checks that are not met, each with its gate, and the things that they concern."""

    def __init__(self, gate: str, unmet: list[Check], items: Iterable[Item] = ()):
        self.gate, self.unmet, self.items = gate, unmet, tuple(items)
        super().__init__(" ".join(check.sentence for check in unmet))


def gate_check(gate: str, name: str) -> Callable:
    """Register a check: a function of (subject, day) that answers a Check, or None where it does not apply.

    A concession names it by its name, so that is known without running it and never changes.
    """

    def register(function: Callable[[Subject, date], Check | None]) -> Callable:
        extensions.gate_checks.setdefault(gate, {})[name] = function
        return function

    return register


def names_of(gate: str) -> list[str]:
    """The checks that stand at a gate, by name."""
    return list(extensions.gate_checks.get(gate, {}))


def checks(gate: str, subject: Subject, on: date) -> list[Check]:
    """Every check of a gate; an unmet one shows the concession that lets it pass."""
    asked = ((name, function(subject, on)) for name, function in extensions.gate_checks.get(gate, {}).items())
    return [_judged(gate, replace(check, name=name), subject, on) for name, check in asked if check]


def _judged(gate: str, check: Check, subject: Subject, on: date) -> Check:
    """The check with its gate, and passed where a concession passes it."""
    passing = None if check.met else concession_for(gate, check.name, subject.items, on)
    if passing is None:
        return replace(check, gate=gate)
    words = f"{passing.number}, {passing.given_by}, {passing.given_role}: {passing.reason}"
    return replace(check, gate=gate, met=True, concession=words)


def concession_for(gate: str, name: str, items: Iterable[Item], on: date) -> Concession | None:
    """The latest concession in force on the day that names this check and one of the things.

    One given on the day itself counts: a day is all that a concession is dated by.
    """
    named = {c.pk: c for item in items for c in item.concessions.all() if c.gate == gate and c.passes(name)}
    holding = (concession for concession in named.values() if concession.in_force_on(on))
    return max(holding, key=lambda concession: concession.given_on, default=None)


def unmet(gate: str, subject: Subject, on: date) -> list[Check]:
    return [check for check in checks(gate, subject, on) if not check.met]


def pass_gates(gates: Iterable[str], subject: Subject, on: date, *, afterwards: bool) -> list[UnmetGate]:
    """Start now: raise GateClosed where a check is unmet. Record what has happened: keep the unmet checks for ever."""
    kept = []
    for gate in gates:
        missing = unmet(gate, subject, on)
        if missing and not afterwards:
            raise GateClosed(gate, missing, subject.items)
        kept += [_keep_unmet(gate, check, subject, on) for check in missing]
    return kept


def pass_check(gate: str, check: Check, subject: Subject, on: date, *, afterwards: bool) -> None:
    """One check of a gate by itself, where a step stands before no other of that gate."""
    check = _judged(gate, check, subject, on)
    if check.met:
        return
    if not afterwards:
        raise GateClosed(gate, [check], subject.items)
    _keep_unmet(gate, check, subject, on)


def pass_named(gate: str, name: str, subject: Subject, on: date, *, afterwards: bool) -> None:
    """One check by its name, where the step concerns only that."""
    if check := extensions.gate_checks[gate][name](subject, on):
        pass_check(gate, replace(check, name=name), subject, on, afterwards=afterwards)


def _keep_unmet(gate: str, check: Check, subject: Subject, on: date) -> UnmetGate:
    row = UnmetGate.objects.create(
        gate=gate, check_name=check.name, sentence=check.sentence, subject_number=subject.number, happened_on=on
    )
    row.items.set(subject.items)
    return row


def label_of(gate: str) -> str:
    return Gate(gate).label
