"""No current, or no samples: stretches to be explained, silent restarts, gaps that give bounds and not a number."""

import numpy as np

from process.chemistry.traces import Gap
from process.tracing import words
from process.tracing.case import Case, Context
from process.tracing.findings import MOST_OF_A_KIND, SHOWN_LINES, Choice, Finding
from process.tracing.stretches import Zero, restart_of, zeros

GONE = Choice("gone", "the current was gone: count nothing")
LOGGER = Choice("exclude", "the logger failed: leave the samples out, a gap remains")
RESTARTS = (
    Choice("by itself", "it came back by itself"),
    Choice("by hand", "somebody switched it on; the sheet lacks the line"),
)
GAPS = (
    Choice("open", "leave it open: bounds, not a number"),
    Choice("bridge", "it went on as at both ends: a straight line"),
    Choice("nothing", "nothing flowed"),
)


def stretches(case: Case, context: Context) -> list[Finding]:
    """Zero current for more than a minute inside the run."""
    found = [each for each in zeros(case.times_s, case.currents_a, case.zero_a) if _inside(case, each, context)]
    if len(found) > MOST_OF_A_KIND:
        return [_many(case, found)]
    return [finding for zero in found for finding in _stretch(case, zero, context)]


def _inside(case: Case, zero: Zero, context: Context) -> bool:
    if zero.last + 1 >= case.times_s.size:
        return context.stops_s is not None and case.times_s[zero.first] < context.stops_s - 2 * case.interval_s
    return context.stops_s is None or bool(case.times_s[zero.first] < context.stops_s)


def _stretch(case: Case, zero: Zero, context: Context) -> list[Finding]:
    indices = np.arange(zero.first, zero.last + 1)
    numbers, count = case.lines_of(indices, SHOWN_LINES), int(indices.size)
    from_s, to_s = float(case.times_s[zero.first]), float(case.times_s[zero.last])
    comes_back = zero.last + 1 < case.times_s.size
    until = float(case.times_s[zero.last + 1]) if comes_back else to_s
    most = words.span(until - float(case.times_s[zero.first - 1]))
    said = f"No current for at least {words.span(to_s - from_s)} and at most {most} ({words.lines(numbers, count)})."
    found = [Finding(f"zero:{numbers[0]}", "zero", said, (GONE, LOGGER), "", numbers, count, from_s, until, indices)]
    if comes_back and restart_of(to_s, until, context.switchings) == "silent":
        line = case.line_of(zero.last + 1)
        back = words.amperes(float(case.currents_a[zero.last + 1]))
        said = f"Silent restart: in line {line} {back} flow again, and no line of the sheet says who switched it on."
        found.append(Finding(f"restart:{line}", "restart", said, RESTARTS, "", (line,), 1, to_s, until))
    return found


def _many(case: Case, found: list[Zero]) -> Finding:
    indices = np.concatenate([np.arange(zero.first, zero.last + 1) for zero in found])
    numbers = tuple(case.line_of(zero.first) for zero in found[:SHOWN_LINES])
    said = f"The current is gone {len(found)} times (beginning in {words.lines(numbers, len(found))})."
    return Finding("zeros", "zero", said, (GONE, LOGGER), "", numbers, len(found), indices=indices)


def gaps(case: Case, found: tuple[Gap, ...]) -> list[Finding]:
    """Gaps as the other decisions leave them."""
    if len(found) > MOST_OF_A_KIND:
        most = sum(gap.most_ah for gap in found)
        said = f"{len(found)} stretches have no samples; together they carried between 0 and {most:.4g} Ah."
        return [Finding("gaps", "gap", said, GAPS, "", (), len(found), found[0].from_s, found[-1].to_s)]
    return [_gap(case, gap) for gap in found]


def _gap(case: Case, gap: Gap) -> Finding:
    first = int(np.searchsorted(case.times_s, gap.from_s, side="right")) - 1
    last = int(np.searchsorted(case.times_s, gap.to_s))
    numbers = tuple(case.line_of(min(max(i, 0), case.times_s.size - 1)) for i in (first, last))
    said = (
        f"No samples for {words.span(gap.to_s - gap.from_s)} between lines {numbers[0]} and {numbers[1]}, "
        f"where one every {words.span(case.interval_s)} is usual: between 0 and {gap.most_ah:.2f} Ah passed."
    )
    return Finding(gap_key(gap), "gap", said, GAPS, "", numbers, 1, gap.from_s, gap.to_s)


def gap_key(gap: Gap) -> str:
    return f"gap:{round(gap.from_s)}"
