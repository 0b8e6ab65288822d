"""Currents that are hardly true: spikes, decimal slips, and the wrong sign."""

import numpy as np
from numpy.typing import NDArray

from process.chemistry.traces import SPIKE_FACTOR
from process.tracing import words
from process.tracing.case import Case, Context
from process.tracing.findings import MOST_OF_A_KIND, SHOWN_LINES, Choice, Finding
from process.tracing.samples import Floats

SLIP_TOLERANCE = 0.08  # of the neighbours' current, after the decimal sign is moved
NEIGHBOURS = 3
LONG_RUN = 6  # samples in a row are no spike but another current
EXCLUDE = Choice("exclude", "leave out")
KEEP = Choice("keep", "it flowed: count it")


def spikes(case: Case, context: Context) -> list[Finding]:
    """Samples above 1.5 times the plan, and lone samples at a tenth of their neighbours."""
    usual = context.planned_a or case.typical_a
    if usual <= 0:
        return []
    sizes = case.currents_a if case.currents_a.min(initial=0.0) >= 0 else np.abs(case.currents_a)
    high = np.flatnonzero(sizes > SPIKE_FACTOR * usual)
    groups = _runs(high)
    slipped_down = [np.array([i]) for i in _low_slips(case, sizes)]
    groups = sorted([*groups, *slipped_down], key=lambda run: int(run[0]))
    if len(groups) > MOST_OF_A_KIND:
        return [_many(case, np.concatenate(groups), usual)]
    return [_spike(case, run, usual, bool(context.planned_a)) for run in groups]


def _runs(indices: NDArray[np.intp]) -> list[NDArray[np.intp]]:
    """Samples that follow each other, together."""
    if not indices.size:
        return []
    return list(np.split(indices, np.flatnonzero(np.diff(indices) > 1) + 1))


def _low_slips(case: Case, sizes: Floats) -> list[int]:
    low = np.flatnonzero(sizes < case.typical_a / 5)
    low = low[(sizes[low] > case.zero_a) & (low > 0) & (low < sizes.size - 1)]
    tenfold = case.currents_a[low] * 10
    near = np.ones(low.shape, dtype=bool)
    for step in (-1, 1):
        beside = case.currents_a[low + step]
        near &= np.abs(tenfold - beside) <= SLIP_TOLERANCE * np.abs(beside)
    return [int(i) for i in low[near]]


def _spike(case: Case, run: NDArray[np.intp], usual: float, is_plan: bool) -> Finding:
    first, last = int(run[0]), int(run[-1])
    factor = _slip(case, run)
    numbers, count = case.lines_of(run, SHOWN_LINES), int(run.size)
    value = float(case.currents_a[first])
    where = words.lines(numbers, count)
    choices: tuple[Choice, ...] = (EXCLUDE, KEEP)
    if factor:
        said = f"{words.amperes(value)} in {where} looks like a decimal slip of {words.amperes(value / factor)}."
        choices = (EXCLUDE, Choice("mend", f"read it as {words.amperes(value / factor)}"), KEEP)
    elif count >= LONG_RUN:
        peak = words.amperes(float(np.abs(case.currents_a[run]).max()))
        limit = f"{SPIKE_FACTOR:g} times {words.amperes(usual)}"
        said = f"The current lies above {limit} for {count} samples, up to {peak} ({where})."
    else:
        limit = f"{SPIKE_FACTOR:g} times the {'planned' if is_plan else 'usual'} {words.amperes(usual)}"
        said = f"{words.amperes(value)} in {where} is more than {limit}."
    return Finding(
        f"spike:{numbers[0]}", "spike", said, choices, "", numbers, count,
        float(case.times_s[first]), float(case.times_s[last]), run, factor,
    )  # fmt: skip


def _slip(case: Case, run: NDArray[np.intp]) -> float:
    """10, 100, 0.1 … by which a short run differs from what stands around it; 0 if it is no slip."""
    if run.size >= LONG_RUN:
        return 0.0
    before = case.currents_a[max(0, int(run[0]) - NEIGHBOURS) : int(run[0])]
    after = case.currents_a[int(run[-1]) + 1 : int(run[-1]) + 1 + NEIGHBOURS]
    around = float(np.median(np.concatenate([before, after]))) if before.size + after.size else 0.0
    if abs(around) <= case.zero_a:  # where nothing flows around it, no decimal was slipped
        return 0.0
    ratios = case.currents_a[run] / around
    if (ratios <= 0).any():
        return 0.0
    power = round(float(np.log10(ratios[0])))
    factor = 10.0**power
    return factor if power and bool((np.abs(ratios / factor - 1) <= SLIP_TOLERANCE).all()) else 0.0


def _many(case: Case, indices: NDArray[np.intp], usual: float) -> Finding:
    numbers, count = case.lines_of(indices, SHOWN_LINES), int(indices.size)
    share = count / case.times_s.size * 100
    unlike = f"are unlike the {words.amperes(usual)} of the plan"
    said = f"{count} samples, {share:.2g} % of all, {unlike} ({words.lines(numbers, count)})."
    return Finding("spikes", "spike", said, (EXCLUDE, KEEP), "", numbers, count, indices=indices)


def reversed_sign(case: Case) -> list[Finding]:
    """Metal dissolves while the current runs the other way: net and absolute charge differ."""
    negative = np.flatnonzero(case.currents_a < -case.zero_a)
    if not negative.size:
        return []
    numbers, count = case.lines_of(negative, SHOWN_LINES), int(negative.size)
    said = f"The current is reversed in {count} sample{'s' if count > 1 else ''} ({words.lines(numbers, count)})."
    choices = (
        Choice("net", "it was reversed: subtract it"),
        Choice("absolute", "only the sign is wrong: add it"),
        EXCLUDE,
    )
    return [Finding("reversed", "reversed", said, choices, "", numbers, count, indices=negative)]
