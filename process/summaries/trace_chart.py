"""The current of a trace as a chart, with what was found in it as marks."""

from datetime import UTC, datetime, timedelta

from django.utils import timezone

from process.models import Trace, TraceCurve
from process.summaries.trace_context import context_of
from records.pdf.charts import Axis, Chart, Panel, Series, Target
from records.pdf.charts import Event as Mark
from records.units import show

MARKED = {"spike": "spike", "zero": "no current", "restart": "current back", "reversed": "reversed"}
MOST_MARKS = 6  # more would hide the curve


def trace_chart(trace: Trace) -> Chart | None:
    """Drawn from the reduced curve: the file stays closed."""
    curve = TraceCurve.objects.filter(trace=trace).first()
    points = trace_points(trace, curve.points if curve else [])
    if len(points) < 2 or points[0][0] >= points[-1][0]:
        return None
    values = [value for _, value in points if value is not None]
    planned = context_of(trace.run).planned_a
    lowest = {} if min(values) < 0 else {"low": 0.0}
    panel = Panel(
        Axis("Current", "A", **lowest), (Series("current", points),),
        (Target(f"planned {show(planned, '_a')}", planned),) if planned else (),
    )  # fmt: skip
    return Chart(
        title=f"{trace.original_name}: current", description=_description(trace, values), panels=(panel,),
        tz=timezone.get_current_timezone(), events=_marks(trace),
    )  # fmt: skip


def trace_points(trace: Trace, points: list) -> tuple[tuple[datetime, float | None], ...]:
    """Points of a kept curve as instants."""
    return tuple((trace.starts_at + timedelta(seconds=at), value) for at, value in points)


def _marks(trace: Trace) -> tuple[Mark, ...]:
    found = [each for each in trace.findings if each["kind"] in MARKED and each["from_s"] is not None]
    instants = [(datetime.fromtimestamp(each["from_s"], UTC), MARKED[each["kind"]]) for each in found[:MOST_MARKS]]
    return tuple(Mark(at, name) for at, name in instants if trace.starts_at <= at <= trace.ends_at)


def _description(trace: Trace, values: list[float]) -> str:
    first, last = (timezone.localtime(at) for at in (trace.starts_at, trace.ends_at))
    span = f"{first:%-d %b %H:%M} to {last:%-d %b %H:%M}"
    return f"Current between {show(min(values), '_a')} and {show(max(values), '_a')}, {span}."
