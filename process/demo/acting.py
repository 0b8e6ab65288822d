"""Each step of the demo is taken by the person who took it, at the instant at which it was taken."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from types import SimpleNamespace
from typing import Any

from simple_history.models import HistoricalRecords
from simple_history.signals import pre_create_historical_record

from process.demo.rows import Table, find, instant
from records import access, clock
from records.models import Party

# The entry of a table that says when it happened, the first that is there.
WHEN = (
    "when", "at", "sampled_at", "added_at", "done_at", "requested_on", "given_on", "assessed_on", "examined_on",
    "made_on", "cast_on", "planned_start_at", "taken_at", "weighed_at", "made_up_on", "done_on", "inspected_on",
    "measured_on", "gauged_on", "documented_on", "tested_on", "found_on", "happened_on",
)  # fmt: skip


def when(table: Table) -> datetime:
    return instant(next(table[key] for key in WHEN if key in table))


def without(table: Table, *names: str) -> Table:
    """The columns of a table: neither who and when, nor what is nested in it."""
    return {key: value for key, value in table.items() if key not in {"when", "by", *names}}


@contextmanager
def acting(at: datetime, by: str) -> Iterator[Party]:
    """Hold the clock, and let the history name the person."""
    party = find(Party, by)
    before = getattr(HistoricalRecords.context, "request", None)
    with clock.held_at(at):
        HistoricalRecords.context.request = SimpleNamespace(user=party.user) if party.user else None
        try:
            yield party
        finally:
            HistoricalRecords.context.request = before


@contextmanager
def step(table: Table, by: str = "") -> Iterator[Party]:
    """One step of the scenario: its own instant and person, or the person of the step around it."""
    with acting(when(table), table.get("by") or by) as party:
        yield party


def role_of(party: Party) -> str:
    return next(iter(access.roles_of(party.user)), "")


def _by_the_held_clock(history_instance: Any, **_signal: Any) -> None:
    history_instance.history_date = clock.now()


@contextmanager
def history_by_the_held_clock() -> Iterator[None]:
    """While the demo loads, its history is dated as its steps are."""
    pre_create_historical_record.connect(_by_the_held_clock)
    try:
        yield
    finally:
        pre_create_historical_record.disconnect(_by_the_held_clock)
