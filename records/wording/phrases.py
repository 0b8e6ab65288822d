"""Sentences for reports and certificates, made from facts. The curator edits the result, the facts stay."""

import re
from collections.abc import Iterable, Sequence
from datetime import date

_BEGINS = re.compile(r"[A-Z][a-z’]* [a-z]|[A-Z][a-z]{2,}\b")  # no number such as BA-01, no formula


def day(when: date) -> str:
    """A date as it is written in a sentence: 17 April 2026."""
    return f"{when.day} {when:%B} {when.year}"


def listed(things: Sequence[str]) -> str:
    """a, b and c."""
    return " and ".join(filter(None, [", ".join(things[:-1]), *things[-1:]]))


def joined(parts: Iterable[str], between: str = "; ") -> str:
    """Remarks one behind the other; before one that begins as a sentence of its own stands a full stop.

    >>> joined(["1.5 L", "Evaporation, filled to the mark", "", "lot 7"])
    '1.5 L. Evaporation, filled to the mark; lot 7'
    """
    said = ""
    for part in filter(None, parts):
        stop = ". " if _BEGINS.match(part) else between
        said = f"{said.rstrip('.')}{stop}{part}" if said else part
    return said


def duration(seconds: int) -> str:
    """3 h 10 min; under a minute in seconds."""
    hours, minutes = seconds // 3600, seconds % 3600 // 60
    parts = [f"{hours} h"] * (hours > 0) + [f"{minutes} min"] * (minutes > 0)
    return " ".join(parts) or f"{seconds} s"


def made_from(model: str, when: date, *, metal: str = "copper", mould: str = "", owner: str = "") -> str:
    on = f"a {mould} mould" if mould else "a mould"
    leave = f", with permission of {owner}" if owner else ""
    return f"This copy was deposited in {metal} on {on} taken from {model} on {day(when)}{leave}."


def wall_thickness(
    mean_mm: float, charge_ah: float, points: Sequence[float] = (), method: str = "", *, weighed: bool = True
) -> str:
    """The calculated mean and the measured minimum, never one as the other."""
    charge = f"{charge_ah:.2f} ampere-hours" if charge_ah else ""
    source = " and ".join(filter(None, [charge, "weighing" if weighed else ""]))
    if not points:
        return f"No thickness was measured; the average of {mean_mm:.2f} mm is calculated from {source}."
    how = f" ({method})" if method else ""
    thinnest = f"the thinnest of {len(points)} measured points is {min(points):.2f} mm{how}"
    if len(points) == 1:
        thinnest = f"the one point measured is {points[0]:.2f} mm{how}"
    return f"The wall is {mean_mm:.2f} mm thick on average, calculated from {source}; {thinnest}."


def interruption(seconds: int, when: date, depth_mm: float, test: str = "") -> str:
    absent = f"The current was absent for {duration(seconds)} on {day(when)}"
    boundary = f"a boundary between layers lies about {depth_mm:.2f} mm from the contact face"
    return f"{absent}; {boundary}. {test}".strip()


def generation(generation: int, transfer_count: int, at_least: bool) -> str:
    steps = f"{transfer_count} copying step{'' if transfer_count == 1 else 's'}"
    if generation > 1:
        known = f"at least {steps} lie" if at_least else f"{steps} lie"
        missing = ", and at least one of them is not documented" if at_least else ""
        return f"It repeats a copy, not the original; {known} between the original and this piece{missing}."
    if at_least:
        return f"What it was made from is not known; at least {steps} lie between an original and this piece."
    return f"It was made from a mould of the original; {steps} lie between the original and this piece."


def original_after_moulding(when: date, changes: Sequence[str] = ()) -> str:
    """The statement that the two condition records exist for."""
    if not changes:
        return f"No change attributable to moulding was seen on {day(when)} under the lighting used before."
    if len(changes) == 1:
        return f"One change was seen on {day(when)}: {changes[0]}."
    return f"{len(changes)} changes were seen on {day(when)}: {'; '.join(changes)}."


def weight(copy_g: float, original_g: float) -> str:
    ratio_pct = 100 * copy_g / original_g
    return f"The copy weighs {copy_g:.2f} g, the original {original_g:.2f} g ({ratio_pct:.1f} % of it)."


def inside(contains_lead: bool | None) -> str:
    if contains_lead is None:
        return "Whether the filling contains lead is not known; treat it as if it did."
    if contains_lead:
        return "Contains lead; store away from acid vapours."
    return "The filling contains no added lead."


def marked(text: str, place: str, method: str, *, photographed: bool) -> str:
    photo = "; a photograph of the mark is on file" if photographed else "; no photograph of the mark is on file"
    return f"It carries the mark “{text}” {place}, {method}{photo}."


def edition(number: int, authorised: int, made: int, destroyed: int = 0) -> str:
    gone = f", {destroyed} destroyed" if destroyed else ""
    return f"Copy {number} of {authorised} authorised; {made} made{gone}."


def caption(kind: str, number: str, original: str = "original") -> str:
    """Under every picture of a copy."""
    return f"Photograph of {kind[:1].lower()}{kind[1:]} {number}, not of the {original}."


def ticket(date: str, mark_text: str, place: str) -> tuple[str, str]:
    """What a sale ticket begins with, and how the piece is marked: “Museum copy 2026”, “marked COPY on the reverse”."""
    marked = f"marked {mark_text} on the {place}" if mark_text else "a copy, not an original work"
    return f"Museum copy {date}".strip(), marked


ALWAYS_A_COPY = "This piece must always be described as a copy."
NOT_ORIGINAL = "Certificate of reproduction (not an original work)"
UNMARKED = "UNMARKED COPY, not to leave the workshop"
