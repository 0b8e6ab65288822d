"""A run: starting it, writing on its sheet, weighing what came off."""

from datetime import datetime
from typing import Any

from django.core.exceptions import ValidationError
from django.db import transaction
from django.utils import timezone

from process.models import Cathode, Event, Pull, Reading, Run, Shell
from records import clock, gates
from records.models import DescentLink, Gate, Item

from .moulds import use_pull

BEFORE_SWITCHING_ON = (Gate.AFTER, Gate.BATH)


def start_run(*, run: Run, at: datetime, afterwards: bool, **line: Any) -> Event:
    """Into the bath: the gates are passed, each mould loses a pull, and the sheet gets its first line."""
    if found := _already(run.events, line):
        return found
    cathodes = list(run.cathodes.select_related("mould__item", "mould__model", "core__item"))
    if not cathodes:
        raise ValidationError("Nothing hangs in the bath: add a cathode before the run starts.")
    refuse_future(at)
    day = timezone.localdate(at)
    with transaction.atomic():
        for cathode in cathodes:
            _pass_gates(run, cathode, day, afterwards)
        for cathode in cathodes:
            if cathode.mould:
                cathode.pull = use_pull(mould=cathode.mould, on=day, use=Pull.Use.DEPOSIT)
                cathode.save()
        return Event.objects.create(run=run, kind=Event.Kind.ENTRY, at=at, **line)


def _pass_gates(run: Run, cathode: Cathode, day, afterwards: bool) -> None:
    source = cathode.mould or cathode.core
    items = (source.item,)
    if cathode.mould:
        after = gates.Subject(cathode.mould.model, run.number, (cathode.mould.model, *items))
        gates.pass_gates([Gate.AFTER], after, day, afterwards=afterwards)
    gates.pass_gates([Gate.BATH], gates.Subject(cathode, run.number, items), day, afterwards=afterwards)


def refuse_future(at: datetime) -> None:
    if clock.is_future(at):
        raise ValidationError("This time lies in the future: correct the date or the hour.")


def _already(rows, line: dict[str, Any]):
    """The line that this very form has written before, if it was sent twice."""
    token = line.get("token")
    return rows.filter(token=token).first() if token else None


def _within_run(run: Run, at: datetime) -> None:
    """A line belongs between the entry and the stop."""
    refuse_future(at)
    marks = dict(run.events.filter(kind__in=[Event.Kind.ENTRY, Event.Kind.STOP]).values_list("kind", "at"))
    started, stopped = marks.get(Event.Kind.ENTRY), marks.get(Event.Kind.STOP)
    if started is None:
        raise ValidationError("The run has not started: enter when it went into the bath first.")
    if at < started:
        when = timezone.localtime(started)
        raise ValidationError(f"This is before the run started ({when:%d %b, %H:%M}): correct the time.")
    if stopped and at > stopped:
        when = timezone.localtime(stopped)
        raise ValidationError(f"This is after the run stopped ({when:%d %b, %H:%M}): correct the time.")


def add_reading(*, run: Run, at: datetime, **line: Any) -> Reading:
    """One reading; the same form sent twice gives the same row."""
    if found := _already(run.readings, line):
        return found
    _within_run(run, at)
    with transaction.atomic():
        return Reading.objects.create(run=run, at=at, **line)


def add_event(*, run: Run, at: datetime, kind: str, **line: Any) -> Event:
    """One event other than the entry; a stop or an interruption sets the current to nothing."""
    if found := _already(run.events, line):
        return found
    _within_run(run, at)
    if kind in {Event.Kind.STOP, Event.Kind.INTERRUPTION}:
        line["current_a"] = 0.0
    _stop_is_last(run, at, kind)
    with transaction.atomic():
        return Event.objects.create(run=run, kind=kind, at=at, **line)


def _stop_is_last(run: Run, at: datetime, kind: str) -> None:
    if kind != Event.Kind.STOP:
        return
    if run.events.filter(kind=Event.Kind.STOP).exists():
        raise ValidationError("The run is stopped already: correct the line that stands there.")
    if run.readings.filter(at__gt=at).exists() or run.events.filter(at__gt=at).exists():
        raise ValidationError("There are entries after this time: stop the run later, or correct them.")


def weigh(*, cathode: Cathode, number: str, shell: Shell) -> Shell:
    """A shell comes off its cathode: an item of its own, with its step of descent."""
    source = cathode.mould or cathode.core
    if shell.gross_mass_g <= cathode.tare_g:
        raise ValidationError("The shell weighs no more than its wires: weigh again, or correct the tare.")
    transfer = DescentLink.Transfer.DEPOSIT if cathode.mould else DescentLink.Transfer.SKIN
    day = timezone.localdate(shell.weighed_at) if shell.weighed_at else shell.separated_on
    with transaction.atomic():
        item = Item.objects.create(
            number=number, kind=Item.Kind.SHELL, status=Item.Status.WORKSHOP,
            title=f"Shell, {cathode.label}, run {cathode.run.number}", materials="electrodeposited metal", documented_on=day,
        )  # fmt: skip
        shell.item, shell.cathode = item, cathode
        shell.save(force_insert=True)
        DescentLink.objects.create(
            source=source.item, target=item, transfer=transfer, side=cathode.side, happened_on=day
        )
    return shell


def judge_run(*, run: Run, outcome: str, words: str) -> None:
    """Say how a stopped run ended; a failed one keeps its lesson and its shells as evidence."""
    with transaction.atomic():
        run.outcome, run.outcome_words = outcome, words
        run.version += 1
        run.save()
        if outcome == Run.Outcome.FAILED:
            for shell in Shell.objects.filter(cathode__run=run).select_related("item"):
                _scrap(shell)


def _scrap(shell: Shell) -> None:
    shell.fate = Shell.Fate.SCRAP
    shell.save()
    shell.item.status = Item.Status.EVIDENCE
    shell.item.save()
