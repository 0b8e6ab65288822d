"""Large traces go through the worker: the file is kept first, and each reading of it is a job with its progress."""

import uuid
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
    """`step` is one of take_up, map, decide."""
    if step == "map":
        traces.keep_answers(trace=trace, mapping=Mapping.from_json(arguments["mapping"]))
    back = {"take_up": "trace_withdraw", "map": "trace_mapping", "decide": "trace"}[step]
    return jobs.begin(
        token=job_of(trace, step), kind=KIND, title=f"Reading {trace.original_name}", user=user,
        arguments={"trace": trace.pk, "step": step, **arguments}, url=reverse(back, args=[trace.pk]),
    )  # fmt: skip


def work(job: Job, tell: Tell) -> str:
    """What the worker does; returns where to go on."""
    said = job.arguments
    trace = Trace.objects.select_related("run").filter(pk=said["trace"]).first()
    if trace is None:
        raise jobs.JobRefused("The file was taken away meanwhile, so there is nothing to read.", reverse("run_list"))
    try:
        return STEPS[said["step"]](trace, said, tell)
    except AskFirst as question:
        raise jobs.JobRefused(str(question), job.url) from question
    except ValidationError as error:
        raise jobs.JobRefused(" ".join(error.messages), job.url) from error


def _take_up(trace: Trace, said: dict, tell: Tell) -> str:
    """A file that cannot be read is gone again, so the person is led to sending another."""
    again = reverse("trace_add", args=[trace.run.number])
    try:
        traces.take_up(trace=trace, tell=tell)
    except TraceRefused as refused:
        raise jobs.JobRefused(f"{refused} Nothing was kept.", again) from refused
    return reverse("trace_mapping", args=[said["trace"]])


def _map(trace: Trace, said: dict, tell: Tell) -> str:
    """The file and the answers stay, so that only the wrong one is to be changed."""
    try:
        traces.map_trace(trace=trace, mapping=Mapping.from_json(said["mapping"]), tell=tell)
    except TraceRefused as refused:
        back = reverse("trace_mapping", args=[trace.pk])
        raise jobs.JobRefused(f"It cannot be read so. {refused} Your answers are kept.", back) from refused
    return trace.get_absolute_url()


def _decide(trace: Trace, said: dict, tell: Tell) -> str:
    try:
        traces.decide(trace=trace, decisions=said["decisions"], tell=tell)
        if not said["accept"]:
            return trace.get_absolute_url()
        person = Party.objects.get(pk=said["person"])
        traces.accept(trace=trace, reason=said["reason"], ruling=said["ruling"], person=person)
    except TraceRefused as refused:
        raise jobs.JobRefused(str(refused), trace.get_absolute_url()) from refused
    return f"{trace.run.get_absolute_url()}#charge"


STEPS = {"take_up": _take_up, "map": _map, "decide": _decide}
