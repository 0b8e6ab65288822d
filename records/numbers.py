"""The next free number of a series, offered in forms; never reused."""

import re
from collections.abc import Callable
from typing import TypeVar

from django.db import IntegrityError, transaction
from django.db.models import Model

from records import clock

TRIES = 5
Made = TypeVar("Made")


def next_number(model: type[Model], pattern: str) -> str:
    """Next number of a series such as `RQ-{year}-{n:03d}` or `R.{year}.{n}`; deleted rows in the history count too."""
    pattern = pattern.replace("{year}", str(clock.today().year))
    prefix, suffix = re.split(r"\{n[^}]*\}", pattern)
    taken = set(model.objects.filter(number__startswith=prefix).values_list("number", flat=True))
    taken |= set(model.history.filter(number__startswith=prefix).values_list("number", flat=True))
    shape = re.compile(re.escape(prefix) + r"(\d+)" + re.escape(suffix) + "$")
    used = [int(match[1]) for number in taken if (match := shape.match(number))]
    return pattern.format(n=max(used, default=0) + 1)


def with_next_number(model: type[Model], pattern: str, make: Callable[[str], Made]) -> Made:
    """Make a row under the next free number; where someone else takes it in the same moment, under the one after."""
    for _ in range(TRIES - 1):
        number = next_number(model, pattern)
        try:
            with transaction.atomic():
                return make(number)
        except IntegrityError:
            if not model._base_manager.filter(number=number).exists():
                raise  # not the number was in the way
    return make(next_number(model, pattern))


SERIES = {
    "commission": "RQ-{year}-{n:03d}",
    "risk": "RA-{year}-{n:02d}",
    "condition": "CR-{year}-{n:02d}",
    "concession": "C-{year}-{n:02d}",
    "disposal": "X-{year}-{n:02d}",
    "handover": "H-{year}-{n:03d}",
    "mould": "M-{year}-{n:02d}",
    "core": "P-{year}-{n:02d}",
    "run": "D-{year}-{n:03d}",
    "shell": "S-{n:02d}",
    "copy": "R.{year}.{n}",
    "incident": "I-{year}-{n:02d}",
    "failure": "F-{year}-{n:02d}",
    "bath": "B-{n:02d}",
    "analysis": "BA-{n:02d}",
}
