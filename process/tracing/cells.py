"""What one cell of a table is: a number, an instant, a date, a time, a duration, or a word."""

import re

DATE_YMD = r"\d{4}[-/.]\d{1,2}[-/.]\d{1,2}"
DATE_OTHER = r"\d{1,2}[-/.]\d{1,2}[-/.](?:\d{4}|\d{2})"
DATE = rf"(?:{DATE_YMD}|{DATE_OTHER})"
TIME = r"\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d{1,9})?)?(?:\s?[AaPp]\.?[Mm]\.?)?"
OFFSET = r"\s?(?:[Zz]|UTC|GMT|[+-]\d{2}(?::?\d{2})?)"
KINDS = {  # no text is of two kinds but time and duration; the commonest is tried first
    "number": re.compile(r"[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d{1,3})?"),
    "instant": re.compile(rf"{DATE}[T ,]\s?{TIME}{OFFSET}"),
    "local": re.compile(rf"{DATE}[T ,]\s?{TIME}"),
    "date": re.compile(DATE),
    "time": re.compile(TIME),
    "duration": re.compile(r"(?:\d{1,5}\s*(?:d|days?|[.:\s])[\s,]*)?\d{1,5}:\d{2}:\d{2}(?:[.,]\d{1,9})?"),
    "no number": re.compile(r"[+-]?(?:nan|inf(?:inity)?|∞|#n/a|n/a)", re.IGNORECASE),
}


def kind_of(cell: str) -> str:
    """One of KINDS, "blank" or "word"."""
    text = cell.strip()
    if not text:
        return "blank"
    for kind, pattern in KINDS.items():  # a generator takes half as long again, and this is asked of every cell
        if pattern.fullmatch(text):
            return kind
    return "word"


def column_kind(cells: list[str]) -> str:
    """What a column holds: the kind of nearly all its cells."""
    kinds = [kind for cell in cells if (kind := kind_of(cell)) != "blank"]
    if not kinds:
        return "blank"
    counts = {kind: kinds.count(kind) for kind in set(kinds)}
    numbers = counts.get("number", 0) + counts.get("no number", 0)
    if counts.get("number") and numbers >= 0.9 * len(kinds):
        return "number"
    if counts.get("duration") and counts.get("duration", 0) + counts.get("time", 0) >= 0.9 * len(kinds):
        return "duration"
    stamps = counts.get("instant", 0) + counts.get("local", 0)
    if stamps >= 0.7 * len(kinds):  # one that lacks its offset is a fault of its line, named when it is read
        return "instant" if counts.get("instant", 0) >= counts.get("local", 0) else "local"
    kind, count = max(counts.items(), key=lambda pair: pair[1])
    return kind if count >= 0.9 * len(kinds) else "word"
