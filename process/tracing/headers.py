"""From the words above a column to what it means: units first, then an editable list of header words."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

CURRENT, VOLTAGE, TEMPERATURE = "current", "voltage", "temperature"
TIME, DATE, ELAPSED, OTHER = "time", "date", "elapsed", "other"
MEANINGS = (TIME, DATE, ELAPSED, CURRENT, VOLTAGE, TEMPERATURE, OTHER)
# How units are written → the unit of the mapping, and what a column in it holds.
UNITS = {
    "a": ("A", CURRENT), "amp": ("A", CURRENT), "amps": ("A", CURRENT), "ampere": ("A", CURRENT),
    "ma": ("mA", CURRENT), "milliamp": ("mA", CURRENT), "milliamps": ("mA", CURRENT),
    "v": ("V", VOLTAGE), "volt": ("V", VOLTAGE), "volts": ("V", VOLTAGE), "mv": ("mV", VOLTAGE),
    "c": ("°C", TEMPERATURE), "°c": ("°C", TEMPERATURE), "degc": ("°C", TEMPERATURE), "℃": ("°C", TEMPERATURE),
    "f": ("°F", TEMPERATURE), "°f": ("°F", TEMPERATURE), "degf": ("°F", TEMPERATURE), "℉": ("°F", TEMPERATURE),
    "ms": ("ms", ELAPSED), "s": ("s", ELAPSED), "sec": ("s", ELAPSED), "secs": ("s", ELAPSED),
    "seconds": ("s", ELAPSED), "min": ("min", ELAPSED), "mins": ("min", ELAPSED), "minutes": ("min", ELAPSED),
    "h": ("h", ELAPSED), "hr": ("h", ELAPSED), "hours": ("h", ELAPSED),
}  # fmt: skip
BRACKETED = re.compile(r"[\[(<{]\s*([^\])>}]*?)\s*[\])>}]")
PARTS = re.compile(r"[\s_/.,:;-]+")


@dataclass(frozen=True)
class Header:
    """`meaning` is empty where nothing is known; `certain` where the unit or exactly one word says so."""

    text: str
    meaning: str = ""
    unit: str = ""
    certain: bool = False


def header_of(text: str, words: Iterable[tuple[str, str]]) -> Header:
    """What a header means, by `words`: pairs of meaning and word."""
    name, unit_text = _name_and_unit(text)
    unit, by_unit = UNITS.get(unit_text, ("", ""))
    meanings = _by_words(name, words)
    if OTHER in meanings:
        return Header(text, OTHER, unit, True)
    if by_unit and by_unit != ELAPSED:
        return Header(text, by_unit, unit, True)
    # “min” beside another meaning is its least value; seconds and hours are time whatever letter stands there.
    if by_unit == ELAPSED and (not meanings or meanings & {TIME, ELAPSED} or unit != "min"):
        return Header(text, ELAPSED, unit, True)
    meaning = next((each for each in MEANINGS if each in meanings), "")
    return Header(text, meaning, unit, len(meanings) == 1)


def _name_and_unit(text: str) -> tuple[str, str]:
    """“I [mA]”, “current_A”, “Strom in mA” and “U/V” say their unit; a lone “A” or “V” is a unit too."""
    plain = text.strip().casefold()
    if found := BRACKETED.search(plain):
        return BRACKETED.sub(" ", plain).strip(), found.group(1)
    parts = [part for part in PARTS.split(plain) if part]
    if parts and parts[-1] in UNITS and (len(parts) > 1 or len(parts[0]) > 1 or parts[0] in {"a", "v"}):
        return " ".join(part for part in parts[:-1] if part != "in"), parts[-1]
    return " ".join(parts), ""


def _by_words(name: str, words: Iterable[tuple[str, str]]) -> set[str]:
    """Whole words only; a single letter counts only where it is the whole name."""
    parts = [part for part in PARTS.split(name) if part]
    joined = f" {' '.join(parts)} "
    return {
        meaning
        for meaning, word in words
        if (plain := " ".join(PARTS.split(word.strip().casefold())))
        and (joined == f" {plain} " if len(plain) == 1 else f" {plain} " in joined)
    }
