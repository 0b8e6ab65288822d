"""Long work is asked for, done by a worker, and offered again where the worker died.

Any app names its kinds in `extensions.job_kinds`: a function from a job and `tell(step, share)` to the address where
the outcome stands. It reads and reckons outside of transactions and writes once at the end; what it cannot do it
refuses with `JobRefused`. It may be begun twice, so it must find its own work done.
"""

import logging
import threading
import time
import uuid
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from django.db import connection, transaction
from django.utils.module_loading import import_string

from records import clock, tasks
from records.extensions import job_kinds
from records.models import Job

log = logging.getLogger(__name__)
BEAT_S = 5.0
TELL_EVERY_S = 0.5
BROKEN = "The work broke off by a fault of the register, not of yours. It can be begun again; nothing is lost."


class JobRefused(Exception):
    """One sentence for the person, and where to go on."""

    def __init__(self, sentence: str, url: str) -> None:
        super().__init__(sentence)
        self.url = url


def begin(*, token: uuid.UUID, kind: str, title: str, arguments: dict[str, Any], url: str, user: Any) -> Job:
    """Ask for work; the same token while it is being done is the same work, afterwards it is begun anew."""
    with transaction.atomic():
        job = Job.objects.select_for_update().filter(token=token).first() or Job(token=token, attempt_count=0)
        if job.pk and job.is_open and not job.is_lost:
            return job
        job.kind, job.title, job.arguments, job.url, job.asked_by = kind, title[:300], arguments, url, user
        return _hand_over(job)


def again(*, job: Job) -> Job:
    """The same work once more, for one that was lost or failed."""
    with transaction.atomic():
        job = Job.objects.select_for_update().get(pk=job.pk)
        return _hand_over(job) if job.is_lost or job.state == Job.State.FAILED else job


def _hand_over(job: Job) -> Job:
    job.state, job.step, job.done_pct, job.fault = Job.State.WAITING, "", 0.0, ""
    job.attempt_count += 1
    job.asked_at = job.seen_at = clock.now()
    job.save()
    tasks.work.enqueue(job.pk, job.attempt_count)
    return job


def run(job_pk: int, attempt: int) -> None:
    """Do it, in the worker; an attempt that was given up meanwhile changes nothing more."""
    mine = Job.objects.filter(pk=job_pk, attempt_count=attempt)
    if not mine.filter(state=Job.State.WAITING).update(state=Job.State.WORKING, seen_at=clock.now()):
        return
    job = mine.get()
    try:
        with _heart(job_pk, attempt):
            url = import_string(job_kinds[job.kind])(job, _Teller(mine))
    except JobRefused as refused:
        mine.update(state=Job.State.REFUSED, fault=str(refused), url=refused.url)
    except Exception:
        log.exception("%s broke off", job)
        mine.update(state=Job.State.FAILED, fault=BROKEN)
    else:
        mine.update(state=Job.State.DONE, url=url, done_pct=100.0, step="")


class _Teller:
    """`tell("reading the lines", 0.4)`; written at most twice a second."""

    def __init__(self, mine: Any) -> None:
        self._mine, self._step, self._told_at = mine, "", 0.0

    def __call__(self, step: str, share: float) -> None:
        if step == self._step and time.monotonic() - self._told_at < TELL_EVERY_S:
            return
        self._step, self._told_at = step, time.monotonic()
        self._mine.update(step=step, done_pct=round(100 * min(max(share, 0.0), 1.0), 1), seen_at=clock.now())


@contextmanager
def _heart(job_pk: int, attempt: int) -> Iterator[None]:
    """Signs of life from a thread of its own, since a reader may be silent for a minute."""
    ended = threading.Event()

    def beat() -> None:
        while not ended.wait(BEAT_S):
            Job.objects.filter(pk=job_pk, attempt_count=attempt).update(seen_at=clock.now())
        connection.close()

    thread = threading.Thread(target=beat, daemon=True)
    thread.start()
    try:
        yield
    finally:
        ended.set()
        thread.join()
