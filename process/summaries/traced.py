"""What accepted loggers saw of a run, for its chart: the kept curves, their gaps left as gaps."""

from datetime import datetime

from process.models import Run, TraceCurve
from process.summaries.trace_chart import trace_points
from process.summaries.traces import accepted

Points = tuple[tuple[datetime, float | None], ...]


def traced_points(run: Run, begin: datetime, end: datetime) -> list[Points]:
    """One curve for each trace, cut to the run; the files stay closed."""
    traces = accepted(run)
    if not traces:
        return []
    curves = {curve.trace_id: curve.points for curve in TraceCurve.objects.filter(trace__in=[t.pk for t in traces])}
    found = [_within(trace_points(trace, curves.get(trace.pk, [])), begin, end) for trace in traces]
    return [points for points in found if len(points) > 1]


def _within(points: Points, begin: datetime, end: datetime) -> Points:
    return tuple(point for point in points if begin <= point[0] <= end)
