"""Many readings at once: all of them or none."""

from typing import Any

from django.core.exceptions import ValidationError
from django.db import transaction
from django.utils import timezone

from process.models import Run
from process.services.runs import add_reading
from process.summaries.bench import offset
from records import clock


def add_readings(*, run: Run, lines: list[dict[str, Any]]) -> int | str:
    """How many were kept, or why none was; a row that stands there already is not doubled."""
    before = run.readings.count()
    try:
        with transaction.atomic():
            for line in lines:
                at = line.pop("at")
                try:
                    add_reading(run=run, at=at, **line)
                except ValidationError as error:
                    local = timezone.localtime(at)
                    said = f"{clock.day_words(at)}, {local:%H:%M} {offset(local)}: {' '.join(error.messages)}"
                    raise ValidationError(said) from error
    except ValidationError as error:
        return " ".join(error.messages)
    return run.readings.count() - before
