"""Lines out of order, lines twice, two currents for one instant, lines without a current."""

import numpy as np
from numpy.typing import NDArray

from process.tracing import words
from process.tracing.case import Case
from process.tracing.errors import TraceRefused
from process.tracing.findings import SHOWN_LINES, Choice, Finding

MOST_DISORDER = 0.01  # of the lines; more, and the clock itself ran backwards


def refuse_backwards(case: Case, *, elapsed: bool) -> None:
    """A few lines in a wrong place can be sorted; a clock that runs backwards cannot be believed."""
    count = case.disorder.size
    if not count or (not elapsed and (count <= max(2, MOST_DISORDER * case.samples.count) or _newest_first(case))):
        return
    at = int(case.disorder[0])
    back = words.span(float(case.samples.times_s[at - 1] - case.samples.times_s[at]))
    why = "the counter was started again within the file: send each part as a file of its own"
    if not elapsed:
        why = (
            "the logger’s clock was set back or shows 12 hours without am and pm: put the clock right and export again"
        )
    raise TraceRefused(f"the time goes back by {back}, and {count} times in all; {why}.", case.samples.line_of(at))


def _newest_first(case: Case) -> bool:
    return bool(case.disorder.size >= (case.samples.count - 1) * (1 - MOST_DISORDER))


def order(case: Case) -> list[Finding]:
    if not case.disorder.size:
        return []
    numbers = tuple(case.samples.line_of(int(i)) for i in case.disorder[:SHOWN_LINES])
    count = int(case.disorder.size)
    what = f"{count} line{'s' if count > 1 else ''} stand{'' if count > 1 else 's'} after a later one"
    said = "The newest line stands first." if _newest_first(case) else f"{what} ({words.lines(numbers, count)})."
    return [Finding("order", "order", said, (Choice("sort", "sort by time"),), "sort", numbers, count)]


def doubles(case: Case) -> list[Finding]:
    """Exact duplicates are dropped; two currents of one instant are a question."""
    at_once = np.flatnonzero(case.times_s[1:] == case.times_s[:-1]) + 1
    if not at_once.size:
        return []
    same = _repeats(case, at_once)
    found, exact = [], at_once[same]
    if exact.size:
        numbers, count = case.lines_of(exact, SHOWN_LINES), int(exact.size)
        said = f"{count} lines repeat lines that stand there already" if count > 1 else "One line stands there twice"
        said = f"{said} ({words.lines(numbers, count)})."
        once = (Choice("drop", "count them once"),)
        found.append(Finding("duplicates", "duplicate", said, once, "drop", numbers, count, indices=exact))
    return [*found, *_conflicts(case, at_once[~same])]


def _repeats(case: Case, at_once: NDArray[np.intp]) -> NDArray[np.bool_]:
    """Whether a sample says the same as the one before it of the same instant."""
    return np.asarray(case.currents_a[at_once] == case.currents_a[at_once - 1])


def _conflicts(case: Case, later: NDArray[np.intp]) -> list[Finding]:
    if not later.size:
        return []
    numbers, count = case.lines_of(later, SHOWN_LINES), int(later.size)
    said = f"{count} instant{'s have' if count > 1 else ' has'} two different currents ({words.lines(numbers, count)})."
    choices = (Choice("first", "the line that comes first counts"), Choice("last", "the line that comes last counts"))
    return [Finding("conflicts", "conflict", said, choices, "", numbers, count, indices=later)]


def blanks(case: Case) -> list[Finding]:
    samples = case.samples
    if not samples.blank_count:
        return []
    said = f"{samples.blank_count} line{'s have' if samples.blank_count > 1 else ' has'} no current "
    said += f"({words.lines(samples.blank_lines, samples.blank_count)}): they are left out, and may leave a gap."
    leave = (Choice("drop", "leave them out"),)
    return [Finding("blanks", "blank", said, leave, "drop", samples.blank_lines, samples.blank_count)]
