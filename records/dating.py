"""Uncertain dates: plain words or EDTF (ISO 8601-2) text to EDTF text with its earliest and latest day.

Only known phrases are read, so that nothing is guessed: "1.2.1868" or "1868 or so" is refused with advice.
The bounds are our own: an open end stays open (the library would pad it by ten years), and "about" widens by
ABOUT_YEARS. A calendar date cannot lie before the year 1, so of an older one only "not after the year 1" is
kept beside the EDTF text.
"""

import calendar
import re
from dataclasses import dataclass
from datetime import date, timedelta

LONGEST_TEXT = 80
ABOUT_YEARS = 5

ADVICE = (
    "Write the date as a year (1868), a day (1868-05-12), “about 1868”, “before 1889”, “after 1900”, "
    "“1860 to 1870”, “1860s”, “19th century”, “450 BC”, “undated”, or in EDTF."
)


class DateError(ValueError):
    """Words that are not read as a date; the message says what to write."""


@dataclass(frozen=True, slots=True)
class Dating:
    """A date as it was written, in EDTF, and the days between which it lies (None: open)."""

    words: str
    edtf: str
    earliest: date | None
    latest: date | None


_MONTHS = {name.lower(): number for number, name in enumerate(calendar.month_name) if name}
_MONTHS |= {name.lower(): number for number, name in enumerate(calendar.month_abbr) if name}
_ABOUT = re.compile(r"(?:about|around|circa|ca\.?|c\.) ?(?P<rest>.+)")
_PROBABLY = re.compile(r"(?:probably|perhaps|possibly) (?P<rest>.+)|(?P<before>[^?]+)\?")
_BETWEEN = re.compile(r"(?:between )?(?P<start>.+?) ?(?: to | and | until |–|-) ?(?P<end>.+)")
_DAY = re.compile(r"(?:(?P<day>[0-9]{1,2}) )?(?P<month>[a-z]+)\.? (?P<year>[0-9]{4})")
_DECADE = re.compile(r"(?:the )?(?P<decade>[0-9]{3})0s")
_CENTURY = re.compile(r"(?:the )?(?P<number>[0-9]{1,2})(?:st|nd|rd|th) (?:century|c\.)")
_YEARS = re.compile(r"[0-9]{4} ?[-–] ?[0-9]{4}")
_BC = re.compile(r"(?P<year>[1-9][0-9]{0,3}) (?:bc|bce)")
_CENTURY_BC = re.compile(r"(?:the )?(?P<number>[1-9][0-9]?)(?:st|nd|rd|th) century (?:bc|bce)")
_EDTF_SHAPE = re.compile(r"[0-9X?~%./\[\]{}, -]+")
_UNDATED = {"undated", "unknown", "not known", "no date", "n.d."}
_AROUND = re.compile(r"[~%]")


def read(text: str) -> Dating:
    """The date in a person's words.

    >>> read("about 1868").edtf, read("before 1889").latest
    ('1868~', datetime.date(1888, 12, 31))
    """
    words = re.sub(r"\s+", " ", text).strip()
    if len(words) > LONGEST_TEXT:
        raise DateError(f"Write the date in at most {LONGEST_TEXT} characters; remarks belong in the notes.")
    if words.lower() in _UNDATED:
        return Dating(words, "", None, None)
    edtf = words if _looks_like_edtf(words) else _from_words(words.lower())
    earliest, latest = bounds(edtf)
    return Dating(words, edtf, earliest, latest)


def bounds(edtf: str) -> tuple[date | None, date | None]:
    """First and last day that EDTF text allows; an open or unknown end has none."""
    if edtf.startswith("[..") and edtf.endswith("]"):
        return None, _last(edtf[3:-1])
    if edtf.startswith("[") and edtf.endswith("..]"):
        return _first(edtf[1:-3]), None
    start, slash, end = edtf.partition("/")
    if not slash:
        return _first(edtf), _last(edtf)
    earliest = None if start in ("", "..") else _first(start)
    latest = None if end in ("", "..") else _last(end)
    if earliest and latest and earliest > latest:
        raise DateError("The second date lies before the first: write the earlier one first.")
    if earliest is None and latest is None:
        raise DateError(ADVICE)
    return earliest, latest


def _looks_like_edtf(words: str) -> bool:
    """EDTF's own signs only; a span with spaces round its dash is words."""
    return bool(_EDTF_SHAPE.fullmatch(words)) and not _YEARS.fullmatch(words) and (" " not in words or words[0] in "[{")


def _from_words(words: str) -> str:
    for sign, pattern in (("~", _ABOUT), ("?", _PROBABLY)):
        if match := pattern.fullmatch(words):
            return _single(next(group for group in match.groups() if group)) + sign
    if words.startswith("before "):
        return f"[..{_previous(_single(words.removeprefix('before ')))}]"
    if words.startswith("after "):
        return f"[{_next(_single(words.removeprefix('after ')))}..]"
    if match := _CENTURY_BC.fullmatch(words):
        number = int(match["number"])
        return f"-{number * 100 - 1:04}/-{number * 100 - 100:04}" if number > 1 else "-0099/0000"
    if match := _BETWEEN.fullmatch(words):
        return f"{_part(match['start'])}/{_part(match['end'])}"
    return _single(words)


def _part(words: str) -> str:
    """One end of a span; an end may be about, but not a span again."""
    match = _ABOUT.fullmatch(words)
    return f"{_single(match['rest'])}~" if match else _single(words)


def _single(words: str) -> str:
    """One year, month, day, decade or century."""
    words = words.strip()
    if re.fullmatch(r"[0-9]{4}(?:-[0-9]{2}){0,2}", words):
        return words
    if match := _DECADE.fullmatch(words):
        return f"{match['decade']}X"
    if match := _BC.fullmatch(words):  # EDTF counts a year 0, so 44 BC is -0043
        return f"-{int(match['year']) - 1:04}" if match["year"] != "1" else "0000"
    if (match := _CENTURY.fullmatch(words)) and int(match["number"]) > 0:
        return f"{int(match['number']) - 1:02}XX"
    if (match := _DAY.fullmatch(words)) and match["month"] in _MONTHS:
        day = f"-{int(match['day']):02}" if match["day"] else ""
        return f"{match['year']}-{_MONTHS[match['month']]:02}{day}"
    raise DateError(ADVICE)


def _previous(edtf: str) -> str:
    """The year, or the day, before."""
    first = _first(edtf)
    if first is None:
        raise DateError(ADVICE)
    return f"{first.year - 1:04}" if len(edtf) == 4 else (first - timedelta(days=1)).isoformat()


def _next(edtf: str) -> str:
    last = _last(edtf)
    if last is None:
        raise DateError(ADVICE)
    return f"{last.year + 1:04}" if len(edtf) == 4 else (last + timedelta(days=1)).isoformat()


def _first(edtf: str) -> date | None:
    return _edge(edtf, "lower_strict", -ABOUT_YEARS)


def _last(edtf: str) -> date | None:
    return _edge(edtf, "upper_strict", ABOUT_YEARS)


def _edge(edtf: str, side: str, about_years: int) -> date | None:
    """The library's strict edge as a date, widened where the text says about."""
    from edtf import parse_edtf  # here: its grammar is built anew in every process that imports it
    from edtf.parser.edtf_exceptions import EDTFParseException

    try:
        year, month, day = getattr(parse_edtf(edtf), side)()[:3]
        year += about_years if _AROUND.search(edtf) else 0
        if year >= date.max.year:
            raise DateError(ADVICE)
        if year < 1:
            return None if side == "lower_strict" else date.min
        return date(year, month, min(day, calendar.monthrange(year, month)[1]))
    except (EDTFParseException, AttributeError, TypeError, ValueError, OverflowError) as error:
        raise DateError(ADVICE) from error
