"""Large scans go through the worker: the file is kept, read, and its area kept when a person has looked at it."""

import uuid
from collections.abc import Callable
from typing import Any

from django.conf import settings
from django.db import transaction
from django.urls import reverse

from process.chemistry.errors import ChemistryError
from process.chemistry.scans import MOST_FACES, read_scan
from process.models import AreaPart, Cathode
from process.services.areas import keep_part
from process.services.scan_files import KIND, forget
from process.summaries.scans import facts_of
from records import imaging
from records.models import Job
from records.services import jobs

GONE = "The cathode was taken off the plan meanwhile, so nobody asks for its area. The scan was taken away."
TAKEN = "The scan was taken away meanwhile, or its file is not in the data folder: send it again."


def is_large(size_bytes: int) -> bool:
    """Too much to be read while its person waits for the page."""
    return size_bytes > settings.SCAN_AT_ONCE_BYTES


def begin(*, part: AreaPart, typed: dict[str, Any], user: Any) -> Job:
    """`part` is not saved yet: it says whose area this is and where the file lies; `typed` is shown again later."""
    facts = part.scan_facts
    back = reverse("area_add", args=[part.cathode_id, AreaPart.Shape.SCAN])
    said = {"cathode": part.cathode_id, "facts": facts, "typed": typed, "waits": True}
    return jobs.begin(
        token=uuid.uuid4(), kind=KIND, title=f"Reading {facts['name']}", arguments=said, url=back, user=user
    )


def work(job: Job, tell: Callable[[str, float], None]) -> str:
    """What the worker does; leads to the page on which the area is looked at."""
    facts = job.arguments["facts"]
    if not Cathode.objects.filter(pk=job.arguments["cathode"]).exists():
        take_away(job=job)
        raise jobs.JobRefused(GONE, reverse("run_list"))
    path = imaging.original_path(facts["path"])
    if not job.arguments["waits"] or not path.is_file():
        raise jobs.JobRefused(TAKEN, job.url)
    try:
        scan = read_scan(path.read_bytes(), facts["name"], facts["unit"], facts["side"], MOST_FACES, tell)
    except ChemistryError as error:
        take_away(job=job)
        raise jobs.JobRefused(f"{sentence_of(error)} Nothing was kept.", job.url) from error
    _write(job, facts={**facts, **facts_of(scan)})
    return reverse("scan_found", args=[job.token])


def sentence_of(error: ChemistryError) -> str:
    return f"The scan {error.problem}." if error.input == "scan" else f"{error}."


def keep(*, job: Job, part: AreaPart) -> AreaPart:
    with transaction.atomic():
        _write(job, waits=False)
        return keep_part(part=part)


def take_away(*, job: Job) -> None:
    """Nobody wants it: the file goes, unless something else names it."""
    with transaction.atomic():
        _write(job, waits=False)
        forget(job.arguments["facts"]["path"])


def _write(job: Job, **said: Any) -> None:
    job.arguments = {**job.arguments, **said}
    Job.objects.filter(pk=job.pk).update(arguments=job.arguments)
