"""What the composition of a piece asks of its keeper: on its page, its tag and its papers."""

from records import extensions
from records.extensions import Care
from records.models import Item


def care_of(item: Item) -> list[Care]:
    """The gravest first; remembered on the row, for a page and each of its papers ask for it."""
    if not hasattr(item, "_care"):
        item._care = [care for source in extensions.care_sources for care in source(item)]
    return item._care


def tag_words_of(item: Item) -> str:
    """“Plaster inside, keep dry.”: what stands on a tag."""
    return " ".join(f"{care.tag_words.rstrip('.')}." for care in care_of(item) if care.tag_words)


def survey_of(item: Item) -> Care | None:
    """The care that asks for the shortest time between two looks."""
    asked = [care for care in care_of(item) if care.survey_months_count]
    return min(asked, key=lambda care: care.survey_months_count, default=None)
