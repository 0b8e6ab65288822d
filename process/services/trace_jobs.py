"""Large traces go through the worker: the file is kept first, and each reading of it is a job with its progress."""

import uuid
from datetime import datetime
from typing import Any

from django.conf import settings
from django.core.exceptions import ValidationError
from django.urls import reverse

from process.models import Trace
from process.services import traces
from process.services.trace_reckoning import Tell
from process.tracing import AskFirst, Mapping, TraceRefused
from records.models import Job, Party
from records.services import jobs

KIND = "trace"


def is_large(size_bytes: int) -> bool:
    """Too much to be read while its person waits for the page."""
    return size_bytes > settings.TRACE_AT_ONCE_BYTES


def job_of(trace: Trace, step: str) -> uuid.UUID:
    """The same step of the same trace is the same job, however often it is asked for."""
    return uuid.uuid5(trace.token, step)


def begin(trace: Trace, step: str, user: Any, **arguments: Any) -> Job:
    """`step` is one of STEPS."""
    if step == "map":
        traces.keep_answers(trace=trace, mapping=Mapping.from_json(arguments["mapping"]))
    back = {"take_up": "trace_withdraw", "map": "trace_mapping"}.get(step, "trace")
    return jobs.begin(
        token=job_of(trace, step), kind=KIND, title=f"Reading {trace.original_name}", user=user,
        arguments={"trace": trace.pk, "step": step, **arguments}, url=reverse(back, args=[trace.pk]),
    )  # fmt: skip


def typed_in_vain(trace: Trace) -> dict[str, Any]:
    """Decisions, reason and ruling of a sending that the worker could not keep, for the form to show again."""
    if not (trace.is_pending and is_large(trace.size_bytes_count)):
        return {}
    ended = Job.objects.filter(token=job_of(trace, "decide"), state__in=[Job.State.REFUSED, Job.State.FAILED]).first()
    return ended.arguments if ended else {}


def reckoned_again(trace: Trace) -> tuple[datetime, list[str]] | None:
    """When the worker last reckoned a large trace again, and what came out otherwise."""
    if not is_large(trace.size_bytes_count):
        return None
    ended = Job.objects.filter(token=job_of(trace, "again"), state=Job.State.DONE).first()
    return (ended.seen_at, ended.arguments.get("found", [])) if ended else None


def work(job: Job, tell: Tell) -> str:
    """What the worker does; returns where to go on."""
    said = job.arguments
    trace = Trace.objects.select_related("run").filter(pk=said["trace"]).first()
    if trace is None:
        raise jobs.JobRefused("The file was taken away meanwhile, so there is nothing to read.", reverse("run_list"))
    try:
        return STEPS[said["step"]](trace, job, tell)
    except AskFirst as question:
        raise jobs.JobRefused(str(question), job.url) from question
    except ValidationError as error:
        raise jobs.JobRefused(" ".join(error.messages), job.url) from error


def _take_up(trace: Trace, job: Job, tell: Tell) -> str:
    """A file that cannot be read is gone again, so the person is led to sending another."""
    again = reverse("trace_add", args=[trace.run.number])
    try:
        traces.take_up(trace=trace, tell=tell)
    except TraceRefused as refused:
        raise jobs.JobRefused(f"{refused} Nothing was kept.", again) from refused
    return reverse("trace_mapping", args=[trace.pk])


def _map(trace: Trace, job: Job, tell: Tell) -> str:
    """The file and the answers stay, so that only the wrong one is to be changed."""
    try:
        traces.map_trace(trace=trace, mapping=Mapping.from_json(job.arguments["mapping"]), tell=tell)
    except TraceRefused as refused:
        back = reverse("trace_mapping", args=[trace.pk])
        raise jobs.JobRefused(f"It cannot be read so. {refused} Your answers are kept.", back) from refused
    return trace.get_absolute_url()


def _decide(trace: Trace, job: Job, tell: Tell) -> str:
    said = job.arguments
    try:
        traces.decide(trace=trace, decisions=said["decisions"], tell=tell)
        if not said["accept"]:
            return trace.get_absolute_url()
        person = Party.objects.get(pk=said["person"])
        traces.accept(trace=trace, reason=said["reason"], ruling=said["ruling"], person=person)
    except TraceRefused as refused:
        raise jobs.JobRefused(str(refused), trace.get_absolute_url()) from refused
    return f"{trace.run.get_absolute_url()}#charge"


def _again(trace: Trace, job: Job, tell: Tell) -> str:
    """What came out stands in the job: the trace itself is not touched."""
    try:
        found = traces.differences(trace, tell)
    except TraceRefused as refused:
        raise jobs.JobRefused(str(refused), trace.get_absolute_url()) from refused
    Job.objects.filter(pk=job.pk).update(arguments={**job.arguments, "found": found})
    return trace.get_absolute_url()


def _withdraw(trace: Trace, job: Job, tell: Tell) -> str:
    """Where it ruled over others, these are read again."""
    try:
        traces.withdraw(trace=trace, reason=job.arguments["reason"], tell=tell)
    except TraceRefused as refused:
        raise jobs.JobRefused(str(refused), trace.get_absolute_url()) from refused
    return trace.run.get_absolute_url()


STEPS = {"take_up": _take_up, "map": _map, "decide": _decide, "again": _again, "withdraw": _withdraw}
