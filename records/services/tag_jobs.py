"""Many tags are made by the worker, with progress; the sheet is kept for a day, to be printed from the page."""

import os
import tempfile
import uuid
from collections.abc import Callable
from pathlib import Path
from typing import Any

from django.conf import settings
from django.urls import reverse

from records import clock
from records.models import Item, Job
from records.pdf.refusal import CannotPrint
from records.services import jobs

KIND = "tags"
AT_ONCE = 60  # so many are made while one waits
KEPT_S = 86_400


def begin(*, items: list[Item], about: dict[str, Any], user: Any) -> Job:
    """`about`: kind, sheet, start, right_mm, up_mm, marks."""
    return jobs.begin(
        token=uuid.uuid4(), kind=KIND, title=f"{len(items):,} tags", user=user, url=reverse("label_sheet"),
        arguments={"items": [item.pk for item in items], **about},
    )  # fmt: skip


def file_of(token: uuid.UUID | str) -> Path:
    return settings.PRINTING_DIR / f"tags-{token}.pdf"


def work(job: Job, tell: Callable[[str, float], object]) -> str:
    from records.reports.tag_sheets import make_tags  # the paper kit is read when a paper is made

    said = dict(job.arguments)
    chosen = Item.objects.select_related("label", "place", "owner").prefetch_related("marks").in_bulk(said.pop("items"))
    try:
        pdf = make_tags(
            list(chosen.values()), said.pop("kind"), issued_at=clock.now(), museum=settings.MUSEUM_NAME,
            tell=lambda share: tell("making the tags", share), **said,
        )  # fmt: skip
    except CannotPrint as reason:
        raise jobs.JobRefused(str(reason), reverse("label_sheet")) from reason
    _keep(file_of(job.token), pdf)
    return reverse("label_sheet_file", args=[job.token])


def _keep(file: Path, pdf: bytes) -> None:
    """Beside it first and then into place; what is older than a day has been printed."""
    settings.PRINTING_DIR.mkdir(parents=True, exist_ok=True)
    for old in settings.PRINTING_DIR.glob("*.pdf"):
        if clock.now().timestamp() - old.stat().st_mtime > KEPT_S:
            old.unlink(missing_ok=True)
    descriptor, path = tempfile.mkstemp(dir=settings.PRINTING_DIR)
    with os.fdopen(descriptor, "wb") as beside:
        beside.write(pdf)
    Path(path).replace(file)
