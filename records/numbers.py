"""The next free number of a series, offered in forms; never reused."""

import re

from django.db.models import Model

from records import clock


def next_number(model: type[Model], pattern: str) -> str:
    """Next number of a series such as `RQ-{year}-{n:03d}` or `R.{year}.{n}`; deleted rows in the history count too."""
    pattern = pattern.replace("{year}", str(clock.today().year))
    prefix, suffix = re.split(r"\{n[^}]*\}", pattern)
    taken = set(model.objects.filter(number__startswith=prefix).values_list("number", flat=True))
    taken |= set(model.history.filter(number__startswith=prefix).values_list("number", flat=True))
    shape = re.compile(re.escape(prefix) + r"(\d+)" + re.escape(suffix) + "$")
    used = [int(match[1]) for number in taken if (match := shape.match(number))]
    return pattern.format(n=max(used, default=0) + 1)


SERIES = {
    "commission": "RQ-{year}-{n:03d}",
    "risk": "RA-{year}-{n:02d}",
    "condition": "CR-{year}-{n:02d}",
    "concession": "C-{year}-{n:02d}",
    "mould": "M-{year}-{n:02d}",
    "core": "P-{year}-{n:02d}",
    "run": "D-{year}-{n:03d}",
    "shell": "S-{n:02d}",
    "copy": "R.{year}.{n}",
    "bath": "B-{n:02d}",
    "analysis": "BA-{n:02d}",
}
