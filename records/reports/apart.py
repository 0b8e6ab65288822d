"""Tell them apart, as a sheet: two pieces side by side, with what each feature can prove."""

from dataclasses import asdict
from datetime import datetime
from typing import Any

from django.conf import settings
from django.db.models import prefetch_related_objects

from records.apart import Sheet
from records.extensions import Limit, PaperContext
from records.limits import limits_along
from records.models import Item
from records.pdf import blocks as b
from records.pdf.document import build
from records.pdf.photos import PhotoUnreadable
from records.portraits import best_of
from records.reports.parts import head, local_day, printed
from records.sentences import WORDS
from records.telling import Comparison

KIND = "Tell them apart"
WORD = {"apart": "Yes.", "not apart": "No.", "not known": "Open."}
USE = (
    "A working sheet, made from what the register holds on the day; no issued paper. What is not recorded is left "
    "open. No single feature proves an original."
)


def make_sheet(sheet: Sheet, now: datetime, page_size: str = "A4") -> bytes:
    pair = (sheet.first, sheet.second)
    numbers = " / ".join(item.number for item in pair)
    paper = head(
        KIND, numbers, _opening(" or ".join(map(called, pair))) + "?", sheet.sentence, _context(now, page_size)
    )
    limits = {chain.item: found for chain in sheet.descents if (found := limits_along(chain.item, chain))}
    first = _limits(limits) or _pictures(pair)  # it stays on one page: pictures give way to what limits the use
    blocks = [*first, _table(sheet)]
    return build(paper, blocks, _record(sheet, limits, now), now)


def _limits(found: dict[Item, list[Limit]]) -> list[b.Block]:
    """Whoever takes a piece in hand to compare it must know how it may be used."""
    return [
        b.Notice(f"Limits of use of {called(item)}", "\n".join(f"{each.sentence} ({each.source})" for each in limits))
        for item, limits in found.items()
    ]


def called(item: Item) -> str:
    """“the copy R.2026.1” or “OVM.1931.0044”: a copy is never called by its number alone."""
    return " ".join(filter(None, [WORDS.get(item.kind, ""), item.number]))


def _context(now: datetime, page_size: str) -> PaperContext:
    return PaperContext(1, now, "", "", page_size)


def _pictures(pair: tuple[Item, Item]) -> list[b.Block]:
    """A photograph of each; one whose file is missing is named, for the sheet is needed all the same."""
    prefetch_related_objects(pair, "photos")
    photos, blocks = [], []
    for item in pair:
        try:
            if photo := best_of(item.photos.all()):
                photos.append(printed(photo, _caption(item)))
        except PhotoUnreadable as error:
            blocks.append(b.Prose(str(error)))
    return [b.PhotoGrid(tuple(photos), columns=5), *blocks] if photos else blocks


def _caption(item: Item) -> str:
    """The pieces are named in the caption, so that no picture of a copy passes for its model's."""
    return _opening(called(item))


def _opening(words: str) -> str:
    return words[:1].upper() + words[1:]


def _table(sheet: Sheet) -> b.Block:
    columns = (
        b.Column("Feature"), b.Column(called(sheet.first), empty="not recorded"),
        b.Column(called(sheet.second), empty="not recorded"),
        b.Column("Does it tell them apart?", weight=4.0),
    )  # fmt: skip
    rows = tuple(_row(line) for line in sheet.lines)
    return b.FigureTable(columns, rows, note=USE)


def _row(line: Comparison) -> tuple[str, ...]:
    return line.feature.title, line.first, line.second, f"{WORD[line.answer]} {line.why} {line.feature.proves}"


def _record(sheet: Sheet, limits: dict[Item, list[Limit]], now: datetime) -> dict[str, Any]:
    return {
        "paper": KIND, "museum": settings.MUSEUM_NAME, "made_on": local_day(now),
        "pieces": [sheet.first.number, sheet.second.number], "lines": [asdict(line) for line in sheet.lines],
        "limits of use": {item.number: [asdict(each) for each in found] for item, found in limits.items()},
    }  # fmt: skip
