"""Whether the logger's clock agrees with the run, and samples from before and after it."""

import numpy as np
from numpy.typing import NDArray

from process.tracing import words
from process.tracing.case import Case, Context
from process.tracing.findings import SHOWN_LINES, Choice, Finding

QUARTER_S = 900.0  # zones and forgotten clock changes come in quarters of an hour
LEAST_SHIFT_S = 600.0
TOLERANCE_S = 300.0  # of the future, as everywhere in the register
INCLUDE = Choice("keep", "count them")
OUTSIDE = Choice("exclude", "not of this run: leave them out")


def clock(case: Case, context: Context) -> list[Finding]:
    """A trace that begins and ends as much too early or too late as the other, or that misses the run altogether."""
    if context.starts_s is None:
        return []
    first, last = float(case.times_s[0]), float(case.times_s[-1])
    slack = max(2 * case.interval_s, 120.0)
    early = first - context.starts_s
    stops = context.stops_s if context.stops_s is not None else context.now_s
    misses = last < context.starts_s or (stops is not None and first > stops)
    alike = context.stops_s is not None and abs((last - context.stops_s) - early) <= slack
    if abs(early) < LEAST_SHIFT_S or abs(early) <= slack or not (misses or alike):
        return []
    shift = -_rounded(early, slack)
    how = f"{words.span(abs(early))} {'before' if early < 0 else 'after'} the run"
    also = "ends as much apart from it" if alike else "does not meet it"
    said = f"The trace begins {how} and {also}: a wrong clock or zone."
    choices = (
        Choice("shift", f"put it {words.span(abs(shift))} {'later' if shift > 0 else 'earlier'}"),
        Choice("keep", "the clock is right"),
    )
    return [Finding("clock", "clock", said, choices, "", (case.line_of(0),), 1, first, last, number=shift)]


def _rounded(shift: float, slack: float) -> float:
    quarter = round(shift / QUARTER_S) * QUARTER_S
    return quarter if quarter and abs(shift - quarter) <= slack else shift


def outside(case: Case, context: Context, shift_s: float) -> list[Finding]:
    """Samples before the entry and after the stop, by the clock as it was decided."""
    found = []
    if context.starts_s is not None:
        before = np.arange(np.searchsorted(case.times_s, context.starts_s - shift_s - 1, side="left"))
        found.append(("before", "before the run began", before))
    end_s = context.stops_s if context.stops_s is not None else context.now_s and context.now_s + TOLERANCE_S
    if end_s is not None:
        after = np.arange(np.searchsorted(case.times_s, end_s - shift_s + 1, side="right"), case.times_s.size)
        words_after = "after the run ended" if context.stops_s is not None else "in the future"
        found.append(("after", words_after, after))
    return [_outside(case, key, said, indices) for key, said, indices in found if indices.size]


def _outside(case: Case, key: str, said: str, indices: NDArray[np.intp]) -> Finding:
    numbers, count = case.lines_of(indices, SHOWN_LINES), int(indices.size)
    sentence = f"{count} sample{'s lie' if count > 1 else ' lies'} {said} ({words.lines(numbers, count)})."
    return Finding(
        f"outside:{key}", "outside", sentence, (OUTSIDE, INCLUDE), "exclude", numbers, count,
        float(case.times_s[indices[0]]), float(case.times_s[indices[-1]]), indices,
    )  # fmt: skip
