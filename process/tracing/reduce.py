"""A curve for a chart: least and greatest current of each stretch, gaps left open."""

import numpy as np

from process.tracing.samples import Floats

MOST_POINTS = 2000
Curve = list[list[float | None]]


def reduce(times_s: Floats, currents_a: Floats, gap_s: float, most_points: int = MOST_POINTS) -> Curve:
    """[seconds since the first sample, amperes] in time order; amperes are None where a gap of more than `gap_s` is."""
    if times_s.size == 0:
        return []
    if times_s.size <= most_points:
        return _broken(times_s - times_s[0], currents_a, gap_s)
    edges = np.linspace(0, times_s.size, most_points // 2 + 1).astype(np.int64)[:-1]
    low, high = np.minimum.reduceat(currents_a, edges), np.maximum.reduceat(currents_a, edges)
    middles = (edges + np.append(edges[1:], times_s.size)) // 2
    instants = np.column_stack([times_s[edges], times_s[middles]]).ravel() - times_s[0]
    # The bucket that begins high is drawn from its high end, so that a falling edge does not look like a spike.
    falls = currents_a[edges] > (low + high) / 2
    values = np.where(falls[:, None], np.column_stack([high, low]), np.column_stack([low, high])).ravel()
    wide = np.flatnonzero(times_s[1:] - times_s[:-1] > gap_s)
    return _broken(instants, values, gap_s, times_s[wide] - times_s[0])


def _broken(instants: Floats, values: Floats, gap_s: float, gap_starts: Floats | None = None) -> Curve:
    points: Curve = [[round(float(at), 3), round(float(value), 5)] for at, value in zip(instants, values, strict=True)]
    starts = instants[:-1][np.diff(instants) > gap_s] if gap_starts is None else gap_starts
    for start in starts[:200]:
        points.append([round(float(start), 3) + 0.001, None])
    return sorted(points, key=lambda point: point[0] or 0.0)
