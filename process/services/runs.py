"""A run: starting it, writing on its sheet, weighing what came off."""

from collections.abc import Callable
from datetime import datetime
from typing import Any

from django.core.exceptions import ValidationError
from django.db import transaction
from django.db.models import Q
from django.utils import timezone

from process.models import Cathode, Event, MouldWear, Reading, Run, Shell
from process.summaries.words import metal_word
from records import clock
from records.models import DescentLink, Item

from .cores import begin_series
from .entry import enter_bath
from .stays import RAIL_CHANGES, first_on_the_rail, move_pulls, refuse_disorder


def start_run(*, run: Run, at: datetime, afterwards: bool, reason: str = "", **line: Any) -> Event:
    """Into the bath: the gates are passed, each mould loses a pull, and the sheet gets its first line."""
    refuse_future(at)
    with transaction.atomic():
        hold(run)
        if found := already(Event, run, line):
            return found
        _refuse_second_start(run)
        cathodes = list(run.cathodes.select_related("mould__item", "mould__model", "core__item"))
        if not cathodes:
            raise ValidationError("Nothing hangs in the bath: add a cathode before the run starts.")
        enter_bath(run=run, cathodes=cathodes, on=timezone.localdate(at), afterwards=afterwards)
        return write_line(Event, run, reason, kind=Event.Kind.ENTRY, at=at, **line)


def hold(run: Run) -> None:
    """Keep the run's row to this transaction, so that two tablets cannot start or stop it at the same moment."""
    Run.objects.select_for_update().only("pk").get(pk=run.pk)


def _refuse_second_start(run: Run) -> None:
    first = run.events.filter(kind=Event.Kind.ENTRY).first()
    if first:
        raise ValidationError(f"The run started on {_clock(first.at)}: correct that line if it is wrong.")
    if run.outcome:
        raise ValidationError(f"The run is closed as {run.get_outcome_display()}: plan a new one.")


def refuse_future(at: datetime) -> None:
    if clock.is_future(at):
        raise ValidationError("This time lies in the future: correct the date or the hour.")


def already(model: type, run: Run, line: dict[str, Any]):
    """The line that this very form has written before, if it was sent twice; also one that was struck out since."""
    token = line.get("token")
    return model.every.filter(run=run, token=token).first() if token else None


def _identical(run: Run, at: datetime, line: dict[str, Any]) -> Reading | None:
    """The same instant and the same values to the last word: the page was gone back to, and sent again."""
    values = {name: value for name, value in line.items() if name not in {"token", "as_typed"}}
    found = run.readings.filter(at=at, **values).first()
    if found:
        found.stood_already = True
    return found


def write_line(model: type, run: Run, reason: str, **line: Any):
    """A new line of the sheet, with the reason that its history keeps."""
    row = model(run=run, **line)
    row._change_reason = reason or None
    row.save(force_insert=True)
    return row


def _clock(at: datetime) -> str:
    return f"{timezone.localtime(at):%d %b, %H:%M}"


def within_run(run: Run, at: datetime) -> None:
    """A line belongs between the entry and the stop."""
    between(dict(run.events.filter(kind__in=[Event.Kind.ENTRY, Event.Kind.STOP]).values_list("kind", "at")), at)


def between(marks: dict[str, datetime], at: datetime) -> None:
    """The same for many lines, by the instants of entry and stop that were asked for once."""
    refuse_future(at)
    started, stopped = marks.get(Event.Kind.ENTRY), marks.get(Event.Kind.STOP)
    if started is None:
        raise ValidationError("The run has not started: enter when it went into the bath first.")
    if at < started:
        raise ValidationError(f"This is before the run started ({_clock(started)}): correct the time.")
    if stopped and at > stopped:
        raise ValidationError(f"This is after the run stopped ({_clock(stopped)}): correct the time.")


def refuse_outside(line: Reading | Event) -> None:
    """A line that is put back still belongs between the entry and the stop, and nothing stands beyond a stop."""
    within_run(line.run, line.at)
    if getattr(line, "kind", "") == Event.Kind.STOP:
        _nothing_beyond(line.run, line.at, "after", at__gt=line.at)


def add_reading(*, run: Run, at: datetime, reason: str = "", **line: Any) -> Reading:
    """One reading; the same form sent twice gives the same row."""
    with transaction.atomic():
        hold(run)
        if found := already(Reading, run, line) or _identical(run, at, line):
            return found
        within_run(run, at)
        return write_line(Reading, run, reason, at=at, **line)


def add_event(*, run: Run, at: datetime, kind: str, reason: str = "", **line: Any) -> Event:
    """One event other than the entry; a stop or an interruption sets the current to nothing."""
    with transaction.atomic():
        hold(run)
        if found := already(Event, run, line):
            return found
        if kind == Event.Kind.ENTRY:
            _refuse_second_start(run)
        within_run(run, at)
        line["current_a"] = current_of(kind, line.get("current_a"))
        if kind == Event.Kind.STOP:
            _refuse_second_stop(run)
            _nothing_beyond(run, at, "after", at__gt=at)
        return write_line(Event, run, reason, at=at, kind=kind, **line)


def current_of(kind: str, current_a: float | None) -> float | None:
    """What an event says of the current: the charge is counted from it."""
    if kind in {Event.Kind.STOP, Event.Kind.INTERRUPTION}:
        return 0.0
    if kind in {Event.Kind.CURRENT, Event.Kind.RESTART} and current_a is None:
        raise ValidationError({"current_a": "Write the current that flows now: the charge is counted from it."})
    return current_a


def _refuse_second_stop(run: Run) -> None:
    if run.events.filter(kind=Event.Kind.STOP).exists():
        raise ValidationError("The run is stopped already: correct the line that stands there.")


def _nothing_beyond(run: Run, at: datetime, side: str, **where: Any) -> None:
    if run.readings.filter(**where).exists() or run.events.filter(**where).exists():
        raise ValidationError(
            f"There are entries {side} this time ({_clock(at)}): choose another time, or correct them first."
        )


def correct_line(*, line: Reading | Event, reason: str, save: Callable[[], Any]) -> Any:
    """Change a line of the sheet, saying why; what stood there before stays in the history."""
    with transaction.atomic():
        hold(line.run)
        kind = getattr(line, "kind", "")
        if kind == Event.Kind.ENTRY:
            refuse_future(line.at)
            _nothing_beyond(line.run, line.at, "before", at__lt=line.at)
            move_pulls(first_on_the_rail(line.run), timezone.localdate(line.at))
        elif kind == Event.Kind.STOP:
            refuse_future(line.at)
            _nothing_beyond(line.run, line.at, "after", at__gt=line.at)
        else:
            within_run(line.run, line.at)
        if kind in RAIL_CHANGES:
            refuse_disorder(line)
        if kind == Event.Kind.HUNG_IN:
            move_pulls([line.cathode], timezone.localdate(line.at))
        if kind:
            line.current_a = current_of(kind, line.current_a)
        line._change_reason = " ".join(filter(None, [reason, getattr(line, "_change_reason", "")]))
        return save()


def remove_cathode(*, cathode: Cathode) -> None:
    """Take a cathode off the plan; once a mould's pull is used, it stays."""
    if cathode.run.events.filter(kind=Event.Kind.ENTRY).exists():
        raise ValidationError("The run has started: what hung in the bath stays on record.")
    with transaction.atomic():
        cathode.delete()


def weigh(*, cathode: Cathode, number: str, shell: Shell, mould_wear: str = "") -> Shell:
    """A shell comes off its cathode: an item of its own, with its step of descent."""
    source = cathode.mould or cathode.core
    if not cathode.run.events.filter(Q(kind=Event.Kind.STOP) | Q(kind=Event.Kind.TAKEN_OUT, cathode=cathode)).exists():
        raise ValidationError("It still hangs in the bath: weigh it after the stop, or take it out first.")
    if first := Shell.objects.filter(cathode=cathode).select_related("item").first():
        raise ValidationError(f"What grew here is weighed already, as {first.item.number}: correct that one.")
    if source is None:
        raise ValidationError("Say first which mould or core this cathode was: the shell descends from it.")
    if shell.gross_mass_g <= (cathode.tare_g or 0.0):
        raise ValidationError("The shell weighs no more than its wires: weigh again, or correct the tare.")
    transfer = DescentLink.Transfer.DEPOSIT if cathode.mould else DescentLink.Transfer.SKIN
    day = timezone.localdate(shell.weighed_at) if shell.weighed_at else shell.separated_on
    with transaction.atomic():
        item = Item.objects.create(
            number=number,
            kind=Item.Kind.SHELL,
            status=Item.Status.WORKSHOP,
            title=f"Shell, {cathode.label}, run {cathode.run.number}",
            materials=f"electrodeposited {metal_word(cathode.run.ion)}",
            documented_on=day,
        )
        shell.item, shell.cathode = item, cathode
        shell.save(force_insert=True)
        begin_series(shell=shell)
        if mould_wear and cathode.mould:
            MouldWear.objects.create(
                mould=cathode.mould, pull=cathode.pull, seen_on=day or clock.today(),
                feature=f"{mould_wear.strip()} (seen when {number} came off)",
            )  # fmt: skip
        DescentLink.objects.create(
            source=source.item, target=item, transfer=transfer, side=cathode.side, happened_on=day
        )
        if cathode.run.outcome == Run.Outcome.FAILED:
            _scrap(shell)
    return shell


def judge_run(*, run: Run, outcome: str, words: str) -> None:
    """Say how a stopped run ended; a failed one keeps its lesson and its shells as evidence."""
    marks = set(run.events.filter(kind__in=[Event.Kind.ENTRY, Event.Kind.STOP]).values_list("kind", flat=True))
    if Event.Kind.ENTRY in marks and Event.Kind.STOP not in marks:
        raise ValidationError("The run goes on: stop it first, then say how it ended.")
    if Event.Kind.ENTRY not in marks and outcome != Run.Outcome.ABANDONED:
        raise ValidationError("The run never went into the bath: it can only be abandoned.")
    if outcome == Run.Outcome.FAILED and not words.strip():
        raise ValidationError({"outcome_words": "Say what happened: a failure is only worth its lesson."})
    if outcome == Run.Outcome.RESERVED and not words.strip():
        raise ValidationError({"outcome_words": "Say what the reservation is: whoever uses the shells must know it."})
    with transaction.atomic():
        held = Run.objects.select_for_update().get(pk=run.pk)  # as it is now: others may have corrected it
        held.outcome, held.outcome_words = outcome, words
        held.save()
        run.outcome, run.outcome_words, run.version = outcome, words, held.version
        if outcome == Run.Outcome.FAILED:
            for shell in Shell.objects.filter(cathode__run=run).select_related("item", "making_up__copy"):
                if shell.making_up:
                    raise ValidationError(
                        f"{shell.item.number} of this run is part of {shell.making_up.copy.number}, and a failed run "
                        "makes no copy: judge the copy by an inspection instead."
                    )
                _scrap(shell)


def _scrap(shell: Shell) -> None:
    shell.fate = Shell.Fate.SCRAP
    shell.save()
    shell.item.status = Item.Status.EVIDENCE
    shell.item.save()
