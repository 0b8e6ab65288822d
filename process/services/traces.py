"""A trace comes in, is mapped, decided, accepted and withdrawn: the work outside, then one short write."""

import uuid
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

from django.conf import settings
from django.core.exceptions import ValidationError
from django.core.files import File
from django.db import transaction

from process.models import Run, Trace, TraceShape
from process.services.runs import hold
from process.services.trace_files import digest, forget, is_unchanged, path_of, stored_path
from process.services.trace_reckoning import (
    READING,
    Reckoning,
    Tell,
    cuts_between,
    propose,
    read_telling,
    reckon,
    unheard,
    write,
)
from process.summaries.traces import overlapping, undecided
from process.tracing import AskFirst, Mapping, Proposal, TraceRefused, survey
from process.tracing.case import case_of
from process.tracing.disorder import refuse_backwards
from process.tracing.survey import Survey
from records import clock, imaging
from records.models import Party

COMPARED = ("known_ah", "bridged_ah", "open_ah", "absolute_ah", "sample_count", "left_out_count")
NOISE = 1e-9


def receive(
    *, run: Run, file: File, name: str, token: uuid.UUID, brought_by: Party | None = None, later: bool = False
) -> Trace:
    """Keep a file that can be read to its end; raises TraceRefused with nothing left behind.

    `later` looks at its beginning only and leaves the reading to `take_up`.
    """
    if first := run.traces.filter(token=token).first():
        return first
    sha256 = digest(file)
    with imaging.stage_as(file, stored_path(sha256)) as staged:
        proposal = propose(staged.path, settings.TRACE_LIMIT_BYTES)
        mapping = proposal.mapping if later else _read_through(staged.path, proposal)
        with transaction.atomic():
            hold(run)
            if first := run.traces.filter(token=token).first():
                return first
            if standing := run.traces.standing().filter(sha256=sha256).first():
                raise TraceRefused(f"this very file stands at the run already, as {standing.original_name}.")
            return Trace.objects.create(
                run=run, token=token, original_name=name[:255], path=staged.keep(), sha256=sha256,
                size_bytes_count=file.size, brought_by=brought_by, mapping=mapping.as_json(),
                state=Trace.State.READING if later else Trace.State.FOUND,
            )  # fmt: skip


def take_up(*, trace: Trace, tell: Tell) -> Trace:
    """Read what was kept unread; a file that cannot be read is taken away again."""
    if trace.state != Trace.State.READING:
        return trace
    try:
        path = path_of(trace)
        mapping = _read_through(path, propose(path, settings.TRACE_LIMIT_BYTES), tell)
    except TraceRefused:
        withdraw(trace=trace, reason="")
        raise
    with transaction.atomic():
        trace.refresh_from_db()
        if trace.state == Trace.State.READING:
            trace.mapping, trace.state = mapping.as_json(), Trace.State.FOUND
            trace.save()
    return trace


def _read_through(path: Path, proposal: Proposal, tell: Tell = unheard) -> Mapping:
    """Read the whole file once with what is certain and guesses for the rest: broken files are refused now.

    Where both orders of day and month seemed possible and only one reads to the end, it is that one.
    """
    surveyed, mapping = survey(path, settings.TRACE_LIMIT_BYTES), proposal.mapping
    is_open = mapping.time_kind in {"instant", "local"} and not mapping.date_order
    tries = [replace(mapping, date_order=order) for order in ("dmy", "mdy")] if is_open else [mapping]
    sound, fault = [], None
    for number, each in enumerate(tries):
        try:
            _read_once(surveyed, _guessed(each, proposal), _part_of(tell, number, len(tries)))
            sound.append(each)
        except TraceRefused as refused:
            fault = refused
    if fault and not sound:
        raise fault
    return sound[0] if len(sound) == 1 else mapping


def _part_of(tell: Tell, number: int, count: int) -> Tell:
    """Of work that is done `count` times over, what one time tells."""
    return lambda step, share: tell(step, (number + share) / count)


def _read_once(surveyed: Survey, mapping: Mapping, tell: Tell) -> None:
    """A question that only a person can answer is no fault of the file."""
    tell(READING, 0.0)
    with suppress(AskFirst):
        samples = read_telling(surveyed, mapping, tell)
        refuse_backwards(case_of(samples), elapsed=mapping.time_kind == "elapsed")


def _guessed(mapping: Mapping, proposal: Proposal) -> Mapping:
    """Answers for the open questions, only to see whether every line can be read."""
    figures = [i for i in range(mapping.column_count) if i not in mapping.time_columns]
    numeric = [i for i in figures if all(_is_number(row[i]) for row in proposal.preview)]
    return replace(
        mapping,
        zone=mapping.zone or "UTC",
        starts_at=mapping.starts_at or "2000-01-01T00:00:00+00:00",
        elapsed_unit=mapping.elapsed_unit or "s",
        current_unit=mapping.current_unit or "A",
        current_column=mapping.current_column if mapping.current_column is not None else next(iter(numeric), None),
    )


def _is_number(cell: str) -> bool:
    try:
        float(cell.strip().replace(",", "."))
    except ValueError:
        return False
    return True


def keep_answers(*, trace: Trace, mapping: Mapping) -> None:
    """What a person said of a file that is still to be read by it."""
    with transaction.atomic():
        _refuse_settled(trace)
        trace.mapping = mapping.as_json()
        trace.save()


def map_trace(*, trace: Trace, mapping: Mapping, tell: Tell = unheard) -> Trace:
    """Read the file as a person has confirmed; the shape is remembered for the next file."""
    reckoning = reckon(trace, mapping, trace.decisions, [], tell)
    with transaction.atomic():
        _refuse_settled(trace)
        write(trace, reckoning)
        shape = TraceShape.objects.filter(signature=mapping.signature).first() or TraceShape(
            signature=mapping.signature
        )
        remembered = replace(mapping, starts_at="").as_json()
        if shape.mapping != remembered:
            shape.mapping, shape.headers = remembered, " · ".join(mapping.headers)[:500]
            shape.save()
    return trace


def _refuse_settled(trace: Trace) -> None:
    trace.refresh_from_db(fields=["state"])
    if trace.state != Trace.State.FOUND:
        raise ValidationError(f"This trace is {trace.get_state_display()}: withdraw it and send the file anew.")


def decide(*, trace: Trace, decisions: dict[str, str], tell: Tell = unheard) -> Trace:
    """Keep the decisions and reckon what follows; gaps that they open are asked for next."""
    reckoning = reckon(trace, Mapping.from_json(trace.mapping), decisions, trace.cuts, tell)
    with transaction.atomic():
        _refuse_settled(trace)
        write(trace, reckoning)
    return trace


def accept(*, trace: Trace, reason: str, ruling: str, person: Party) -> Trace:
    """The trace counts from now on as evidence; `ruling` says which trace counts where two overlap: this or other."""
    if not trace.is_mapped or undecided(trace):
        raise ValidationError("Decide every finding first: the figure depends on each.")
    if trace.sample_count < 2:
        raise ValidationError("Nothing of this trace is left to count: withdraw it, or decide otherwise.")
    others = overlapping(trace)
    if others and ruling not in {"this", "other"}:
        names = " and ".join(other.original_name for other in others)
        raise ValidationError(f"It overlaps with {names}: say which of them counts in the overlap.")
    changed = _ruled(trace, others, ruling)
    with transaction.atomic():
        hold(trace.run)
        _refuse_settled(trace)
        if {other.pk for other in overlapping(trace)} != {other.pk for other in others}:
            raise ValidationError("Another trace of this run was accepted or withdrawn meanwhile: look at it again.")
        for other, reckoning in changed:
            write(other, reckoning)
        trace.state, trace.reason, trace.accepted_by, trace.accepted_at = "accepted", reason, person, clock.now()
        trace._change_reason = reason
        trace.save()
    return trace


def _ruled(trace: Trace, others: list[Trace], ruling: str) -> list[tuple[Trace, Reckoning]]:
    """Where two overlap, one is reckoned anew without the stretch in which the other counts."""
    if ruling == "this":
        return [(other, _again(other, [*other.cuts, cuts_between(trace)])) for other in others]
    return [(trace, _again(trace, [cuts_between(other) for other in others]))] if others else []


def _again(trace: Trace, cuts: list, tell: Tell = unheard) -> Reckoning:
    """With its own decisions; those on what lies in a cut are kept for the day when the cut is taken back."""
    again = reckon(trace, Mapping.from_json(trace.mapping), trace.decisions, cuts, tell)
    again.columns["decisions"] = trace.decisions
    return again


def ruled_by(trace: Trace) -> list[Trace]:
    """Accepted traces that lack a stretch because this one counts there; withdrawing it reckons them anew."""
    others = trace.run.traces.accepted().exclude(pk=trace.pk)
    return [other for other in others if any(cut["trace"] == trace.pk for cut in other.cuts)]


def withdraw(*, trace: Trace, reason: str, tell: Tell = unheard) -> None:
    """An accepted trace stays as evidence that was not believed; one that never counted is gone, file and all."""
    if trace.is_pending:
        with transaction.atomic():
            hold(trace.run)
            trace.refresh_from_db()
            if not trace.is_pending:
                raise ValidationError("Somebody accepted it meanwhile: look at it again.")
            forget(trace)
            trace.delete()
        return
    if trace.state == Trace.State.WITHDRAWN:
        raise ValidationError(f"It was withdrawn already: “{trace.withdrawn_reason}”. Nothing more is to do.")
    freed = _freed(trace, tell)
    with transaction.atomic():
        hold(trace.run)
        if (
            trace.run.charge_from == Run.ChargeFrom.TRACE
            and not trace.run.traces.accepted().exclude(pk=trace.pk).exists()
        ):
            raise ValidationError("The run’s charge is taken from this trace: choose another evidence first.")
        for other, reckoning in freed:
            write(other, reckoning)
        trace.state, trace.withdrawn_reason, trace._change_reason = Trace.State.WITHDRAWN, reason, reason
        trace.save()


def _freed(trace: Trace, tell: Tell) -> list[tuple[Trace, Reckoning]]:
    """Those that it ruled over, reckoned with the stretch in which it counted."""
    others = ruled_by(trace)
    left = [[cut for cut in other.cuts if cut["trace"] != trace.pk] for other in others]
    return [
        (other, _again(other, cuts, _part_of(tell, done, len(others))))
        for done, (other, cuts) in enumerate(zip(others, left, strict=True))
    ]


def differences(trace: Trace, tell: Tell = unheard) -> list[str]:
    """Reckon an accepted trace again from its file and decisions, and say what comes out otherwise; changes nothing."""
    found = [] if is_unchanged(trace) else ["the file is not the one that came in: its digest differs"]
    columns = _again(trace, trace.cuts, tell).columns
    for name in COMPARED:
        before, after = getattr(trace, name), columns[name]
        if abs(after - before) > NOISE * max(1.0, abs(before)):
            found.append(f"{Trace._meta.get_field(name).verbose_name}: {before:.6g} before, {after:.6g} now")
    return found
