"""A lineage in words, for pages and papers."""

from records.descent.lineage import Lineage

_ORDINALS = (
    "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth",
)  # fmt: skip


def _ordinal(number: int) -> str:
    if number <= len(_ORDINALS):
        return _ORDINALS[number - 1]
    suffix = "th" if number % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{suffix}"


def _generation(lineage: Lineage) -> str:
    if lineage.generation == 0:
        return "from the original itself"
    more = " or more" if lineage.at_least else ""
    return f"{_ordinal(lineage.generation)} generation{more}"


def _first_link(lineage: Lineage) -> str:
    if None not in lineage.path and lineage.path:
        return "a link between undocumented"
    return "first link undocumented"


def words(lineage: Lineage) -> str:
    """Where a thing stands, as it is said in a sentence.

    >>> words(Lineage(generation=2, transfer_count=4, at_least=True, open_ends=("R.1889.7",)))
    'second generation or more; first link undocumented'
    """
    if lineage.polarity == 1 and lineage.generation == 0 and not lineage.by_scan and not lineage.at_least:
        return "original"
    generation = _generation(lineage)
    if lineage.generation == 0 and lineage.at_least:
        generation = "from a model that is not known"
    parts = [f"negative, {generation}" if lineage.polarity == -1 else generation]
    if lineage.polarity is None:
        parts.append("parts of different polarity")
    if lineage.skinned:
        parts.append("with a metal skin")
    if lineage.by_scan:
        parts.append("by way of a scan, which is no transfer of the surface")
    if lineage.at_least:
        return ", ".join(parts) + "; " + _first_link(lineage)
    return ", ".join(parts)


def transfer_words(lineage: Lineage) -> str:
    """The count of surface transfers in words.

    >>> transfer_words(Lineage(transfer_count=4, at_least=True))
    'at least 4 transfers of the surface'
    """
    count = lineage.transfer_count
    noun = "transfer" if count == 1 else "transfers"
    return f"{'at least ' if lineage.at_least else ''}{count or 'no'} {noun} of the surface"
