"""Stretches in which another trace rules: their charge is taken out exactly, so that the parts add up to the whole."""

from collections.abc import Sequence

import numpy as np

from process.chemistry.traces import GAP_INTERVALS
from process.tracing.samples import Floats

Cut = tuple[float, float]


def outside_of(
    times_s: Floats, currents_a: Floats, cuts: Sequence[Cut], interval_s: float
) -> list[tuple[Floats, Floats]]:
    """The pieces of a trace that lie outside the cuts; at an edge between two samples the current is interpolated."""
    pieces, start = [], -np.inf
    for from_s, to_s in [*sorted(cuts), (np.inf, np.inf)]:
        if from_s > start:
            pieces.append(_piece(times_s, currents_a, start, from_s, interval_s))
        start = max(start, to_s)
    return [piece for piece in pieces if piece[0].size > 1]


def _piece(times_s: Floats, currents_a: Floats, start: float, end: float, interval_s: float) -> tuple[Floats, Floats]:
    first, last = np.searchsorted(times_s, start, "left"), np.searchsorted(times_s, end, "right")
    times, currents = times_s[first:last], currents_a[first:last]
    for edge, at_front in ((start, True), (end, False)):
        if not times_s[0] < edge < times_s[-1]:
            continue
        after = int(np.searchsorted(times_s, edge, "left"))
        between = times_s[after] - times_s[after - 1]
        if times_s[after] == edge or np.rint(between) > GAP_INTERVALS * interval_s:
            continue
        value = float(np.interp(edge, times_s[after - 1 : after + 1], currents_a[after - 1 : after + 1]))
        times = np.append(edge, times) if at_front else np.append(times, edge)
        currents = np.append(value, currents) if at_front else np.append(currents, value)
    return times, currents
