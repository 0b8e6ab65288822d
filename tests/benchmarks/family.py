"""A line of two hundred pieces, as deep as it can be and as wide: its page, its tree and its sheet."""

from collections.abc import Iterable, Iterator
from itertools import pairwise

from django.db import connection, reset_queries, transaction
from django.template.loader import render_to_string
from django.test.utils import CaptureQueriesContext

from records import clock
from records.extensions import PaperContext
from records.family import family_of
from records.models import DescentLink, Item
from records.reports.family import make
from tests.benchmarks.clock import median_ms
from tests.benchmarks.pages import everybody

PIECES = 200
STEPS = (("mould", "moulding"), ("shell", "deposit"), ("copy", "making_up"))


def lines(times: int) -> Iterator[str]:
    client = everybody("family")
    context = PaperContext(1, clock.now(), "Benchmark", "registrar")
    yield f"{'line of ' + str(PIECES):<20}{'queries':>8}{'page, ms':>10}{'tree, ms':>10}{'sheet, ms':>11}"
    for name, first in (("deep", _deep()), ("wide", _wide())):
        where = f"/things/{first.number}/family/"
        reset_queries()
        with CaptureQueriesContext(connection) as asked:
            client.get(where)
        page = median_ms(lambda where=where: client.get(where).content, times)
        tree = median_ms(lambda first=first: _draw(first), times)
        sheet = median_ms(lambda first=first: make(first, context), max(3, times // 5))
        yield f"{name:<20}{len(asked):>8}{page:>10.1f}{tree:>10.1f}{sheet:>11.0f}"


def _draw(first: Item) -> str:
    """What the tree costs: from the rows to its SVG."""
    found = family_of(first)
    return render_to_string("records/_family_tree.html", {"drawing": found.drawing, "title": found.tree_words})


@transaction.atomic
def _deep() -> Item:
    """Each piece made of the one before: the longest path that so many pieces can have."""
    pieces = [_piece("DEEP", n) for n in range(PIECES)]
    _link((source, target, STEPS[n % 3][1]) for n, (source, target) in enumerate(pairwise(pieces)))
    return pieces[0]


@transaction.atomic
def _wide() -> Item:
    """One original, and lines of three beneath it: mould, shell, copy."""
    pieces = [_piece("WIDE", n) for n in range(PIECES)]
    before = [pieces[0] if n % 3 == 0 else pieces[n] for n in range(PIECES - 1)]
    _link((before[n], pieces[n + 1], STEPS[n % 3][1]) for n in range(PIECES - 1))
    return pieces[0]


def _piece(name: str, count: int) -> Item:
    kind = "original" if count == 0 else STEPS[(count - 1) % 3][0]
    return Item.objects.create(number=f"{name}.{count}", kind=kind, title=f"Piece {count} of a long line")


def _link(steps: Iterable[tuple[Item, Item, str]]) -> None:
    for source, target, transfer in steps:
        DescentLink.objects.create(source=source, target=target, transfer=transfer)
