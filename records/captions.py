"""What stands under a photograph; a picture of a copy always says that it is of a copy."""

from records.identity import caption_of
from records.models import Item
from records.wording import phrases


def copy_words(item: Item | None) -> str:
    """The sentence under every picture of a copy; nothing under pictures of other things."""
    if item is None or not item.is_copy:
        return ""
    if "label" in item._state.fields_cache:
        return caption_of(item)
    return phrases.caption("electrotype" if item.kind == Item.Kind.HISTORIC_COPY else "copy", item.number)


def with_kind(words: str, item: Item | None) -> str:
    """A caption with that sentence behind it."""
    return " ".join(filter(None, [f"{words.rstrip('.')}." if words else "", copy_words(item)]))
