"""The rail while the run goes on: a piece is hung in, another is taken out, and a mistake is taken back."""

from datetime import datetime
from typing import Any

from django.core.exceptions import ValidationError
from django.db import transaction
from django.utils import timezone

from process.models import Cathode, Event, Run
from process.summaries.hanging import hanging_at
from records.models import Party

from .entry import enter_bath
from .runs import add_event, already, hold, within_run, write_line
from .stays import refuse_disorder


def hang_in(*, run: Run, cathode: Cathode, at: datetime, afterwards: bool, reason: str = "", **line: Any) -> Event:
    """Another piece joins the rail: the same gates as at the start, a pull of its mould, and a new segment."""
    with transaction.atomic():
        hold(run)
        if found := already(Event, run, line):
            return found
        within_run(run, at)
        if run.outcome:
            raise ValidationError("The run is judged: what hangs in the bath now belongs to a new run.")
        if line.get("current_a") is None:
            raise ValidationError({"current_a": "Write the current that flows on all of them from now."})
        cathode.run = run
        _refuse_hanging(run, cathode, at)
        enter_bath(run=run, cathodes=[cathode], on=timezone.localdate(at), afterwards=afterwards)
        return write_line(Event, run, reason, kind=Event.Kind.HUNG_IN, at=at, cathode=cathode, **line)


def _refuse_hanging(run: Run, cathode: Cathode, at: datetime) -> None:
    """One mould or core takes one place on the rail."""
    rail = hanging_at(run.cathodes.all(), run.events.all(), at)
    source = cathode.mould or cathode.core
    same = [each for each in rail if (each.mould_id, each.core_id) == (cathode.mould_id, cathode.core_id)]
    if source and same:
        raise ValidationError(f"{source.item.number} hangs in this run already, as “{same[0].label}”.")


def take_out(*, run: Run, cathode: Cathode, at: datetime, **line: Any) -> Event:
    """One piece leaves the rail while the others go on: a new segment, and it may be weighed."""
    with transaction.atomic():
        hold(run)
        refuse_disorder(Event(run=run, cathode=cathode, kind=Event.Kind.TAKEN_OUT, at=at))
        return add_event(run=run, at=at, kind=Event.Kind.TAKEN_OUT, **line | {"cathode": cathode})


def take_back(*, line: Event, party: Party | None) -> None:
    """With the line that hung it in, the piece leaves the record of the rail, and its pull was never used."""
    cathode, pull = line.cathode, line.cathode.pull
    cathode.struck_at, cathode.struck_by, cathode.struck_reason = line.struck_at, party, line.struck_reason
    cathode.pull = None
    cathode._change_reason = f"struck out: {line.struck_reason}"
    cathode.save()
    if pull:
        pull._change_reason = f"given back: {line.struck_reason}"
        pull.delete()
