"""Tags that hang on a thing: the ordinary one with its code, and the one that an unmarked copy may carry."""

from typing import Any

from django.conf import settings

from records.care import tag_words_of
from records.extensions import PaperContext
from records.identity import identity_of
from records.limits import concessions_of, limits_along, limits_of
from records.lineage import Descent, descent_of
from records.models import Item
from records.pdf.labels import build_tag
from records.pdf.tags import ObjectTag, SaleTicket, ShelfTag, Tag, UnmarkedTag
from records.reports.attached import record
from records.sentences import WORDS


def tag_of(item: Item) -> ObjectTag:
    """Kind and date first, number in clear beside the code; limits of use go with the thing."""
    chain = descent_of(item)
    named = identity_of(item, chain)
    title, limited = _title(named.after, item, chain)
    return ObjectTag(item.number, named.heading, title, named.address, WORDS.get(item.kind, "").upper(), limited)


def shelf_tag_of(item: Item) -> ShelfTag:
    named = identity_of(item)
    return ShelfTag(item.number, named.heading, named.after, named.address, str(item.place or ""))


def sale_ticket_of(copy: Item) -> SaleTicket:
    named = identity_of(copy)
    kind, marked = named.ticket
    return SaleTicket(copy.number, kind, f"{named.heading}; {marked}.", named.after, named.address)


def _title(words: str, item: Item, chain: Descent) -> tuple[str, bool]:
    """What it is after, then the limits of its use and what its composition asks; and whether there are limits."""
    limits, care = limits_of(item, chain), tag_words_of(item)
    told = [*limits, *([care] if care else [])]
    return " ".join([f"{words.rstrip('.')}." if told else words, *told]), bool(limits)


def finished(tag: Tag, item: Item, kind: str, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    rows = {"thing": [item], "marks": item.marks.all(), "concessions": concessions_of(item)}
    data = record(kind, item.number, context, rows, limits=limits_along(item))
    return build_tag(tag, context.issued_at, museum=settings.MUSEUM_NAME, record=data), data


def make_tag(item: Item, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    return finished(tag_of(item), item, "Object tag", context)


def make_unmarked(copy: Item, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    title, _ = _title(copy.title, copy, descent_of(copy))
    return finished(UnmarkedTag(copy.number, title), copy, "Unmarked tag", context)
