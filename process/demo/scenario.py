"""Reading the scenario and telling it, chapter by chapter."""

import tomllib
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from django.utils import timezone

from process.demo.acting import history_by_the_held_clock
from process.demo.chapters import (
    afterlife,
    bath,
    changes,
    condition,
    copies,
    drying,
    duties,
    gauges,
    judgements,
    moulds,
    objects,
    papers,
    people,
    permissions,
    runs,
    supplies,
)  # fmt: skip
from process.demo.present import settled
from process.demo.rows import Table, Written
from process.demo.studio import Studio
from records import clock
from records.models import Document

FOLDER = Path(__file__).parent
# The invented museum's year, and then what goes on there while the demo is looked at.
PARTS = ("scenario.toml", "present.toml")
# What is read as one with a part.
FURTHER = {"scenario.toml": ("afterlife.toml",)}

# In this order: a later chapter names what an earlier one has entered.
CHAPTERS: tuple[tuple[str, Callable[[Table, Studio], None]], ...] = (
    ("people, places and sign-ins", people.tell),
    ("objects, with measurements and photographs", objects.tell),
    ("requests, consents, risk assessments, concessions", permissions.tell),
    ("condition reports", condition.tell),
    ("the bath, its analyses and additions", bath.tell),
    ("power units, prices, throwing power", supplies.tell),
    ("moulds and the core", moulds.tell),
    ("a core weighed until dry", drying.tell_before_the_bath),
    ("runs, weighings and thicknesses", runs.tell),
    ("a skinned core weighed until dry, and closed", drying.tell),
    ("what the runs teach", judgements.tell),
    ("weighed again, worn, destroyed", changes.tell_of_the_workshop),
    ("weighed in water, moulds measured again", gauges.tell),
    ("copies: making-up, finish, marks, inspection, labels", copies.tell),
    ("what changed later", changes.tell),
    ("in other hands, and handled", afterlife.tell),
    ("hours, bills and estimates", afterlife.tell_of_work),
    ("what was given up", afterlife.tell_of_ends),
    ("duties", duties.tell),
)


def read(part: str = PARTS[0]) -> Table:
    """One part of the scenario; {year} in a number is the present year."""
    files = (part, *FURTHER.get(part, ()))
    text = "\n".join((FOLDER / name).read_text(encoding="utf-8") for name in files)
    return settled(tomllib.loads(text.replace("{year}", str(clock.today().year)), parse_float=Written), clock.now())


def tell(say: Callable[[str], Any], *, picture_px: int = 1200) -> None:
    """Enter the whole scenario; each step is a transaction of its own."""
    parts = [read(part) for part in PARTS]
    with ExitStack() as during:
        during.enter_context(timezone.override(ZoneInfo(parts[0]["museum"]["time_zone"])))
        during.enter_context(history_by_the_held_clock())
        studio = during.enter_context(Studio(picture_px))
        for table, number in _photographs(parts):
            studio.begin(table, number)
        for title, chapter in CHAPTERS:
            say(f"  {title}")
            chapter(parts[0], studio)
        say("  the present: a run that goes on, a copy without its mark")
        for _, chapter in CHAPTERS:
            chapter(parts[1], studio)


def issue_papers() -> list[Document]:
    """The papers that the scenario names, as far as the register knows their kinds."""
    parts = [read(part) for part in PARTS]
    with timezone.override(ZoneInfo(parts[0]["museum"]["time_zone"])), history_by_the_held_clock():
        return [document for part in parts for document in papers.issue_all(part)]


def _photographs(tables: Any, number: str | None = None) -> Iterator[tuple[Table, str | None]]:
    """Every photograph in the tables, with the number of the thing that it hangs under."""
    if isinstance(tables, list):
        for table in tables:
            yield from _photographs(table, number)
    elif isinstance(tables, dict):
        if "picture" in tables:
            yield tables, number
        for nested in tables.values():
            yield from _photographs(nested, tables.get("number", number))
