"""Search words: folded in Python, since databases fold case and accents differently."""

import unicodedata

from django.db.models import Q, QuerySet

# What a colleague elsewhere may call the same thing.
SYNONYMS = {
    "mold": "mould", "replica": "copy", "reproduction": "copy", "facsimile": "copy", "electro": "electrotype",
    "galvano": "electrotype", "electroform": "electrotype",
}  # fmt: skip


def fold(text: str) -> str:
    """Lower case, without accents, single spaces."""
    decomposed = unicodedata.normalize("NFKD", text.casefold())
    return " ".join("".join(c for c in decomposed if not unicodedata.combining(c)).split())


def words_of(item) -> str:
    """Everything a thing is found by: number, names, maker, place in the chain, and what its marks read."""
    parts = [item.number, item.title, item.maker, item.object_type, item.materials, item.subject, item.date_words,
             item.get_kind_display(), item.inscriptions]  # fmt: skip
    if item.pk:
        parts += item.marks.values_list("text", flat=True)
    return fold(" ".join(parts))


def spellings(word: str) -> set[str]:
    """A word with either apostrophe: keyboards give the straight one, printed words carry the curly one.

    >>> sorted(spellings("medal's")) == ["medal's", "medal’s"]
    True
    """
    return {word.replace("’", "'"), word.replace("'", "’")}


def find(rows: QuerySet, typed: str, field: str = "search_text") -> QuerySet:
    """Rows in which every typed word, or the trade's word for it, occurs."""
    for word in fold(typed)[:200].split():
        wanted = Q()
        for spelling in spellings(word) | {SYNONYMS.get(word, word)}:
            wanted |= Q(**{f"{field}__contains": spelling})
        rows = rows.filter(wanted)
    return rows
