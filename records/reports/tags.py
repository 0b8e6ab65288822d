"""Tags that hang on a thing: the ordinary one with its code, and the one that an unmarked copy may carry."""

from typing import Any

from django.conf import settings

from records import sentences
from records.extensions import PaperContext
from records.limits import concessions_of, limits_along, limits_of
from records.lineage import Descent, descent_of
from records.models import Item
from records.pdf.labels import build_tag
from records.pdf.tags import ObjectTag, Tag, UnmarkedTag
from records.reports.attached import record
from records.sentences import WORDS


def tag_of(item: Item) -> ObjectTag:
    """Kind and date first, number in clear beside the code; limits of use go with the thing."""
    chain = descent_of(item)
    kind = ", ".join(filter(None, [sentences.kind_words(item, chain), sentences.date_words(item, chain)]))
    address = f"{settings.BASE_URL}{item.get_absolute_url()}"
    return ObjectTag(item.number, kind, _title(item, chain), address, WORDS.get(item.kind, "").upper())


def _title(item: Item, chain: Descent) -> str:
    limits = limits_of(item, chain)
    return " ".join([f"{item.title.rstrip('.')}." if limits else item.title, *limits])


def finished(tag: Tag, item: Item, kind: str, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    rows = {"thing": [item], "marks": item.marks.all(), "concessions": concessions_of(item)}
    data = record(kind, item.number, context, rows, limits=limits_along(item))
    return build_tag(tag, context.issued_at, museum=settings.MUSEUM_NAME, record=data), data


def make_tag(item: Item, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    return finished(tag_of(item), item, "Object tag", context)


def make_unmarked(copy: Item, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    return finished(UnmarkedTag(copy.number, _title(copy, descent_of(copy))), copy, "Unmarked tag", context)
