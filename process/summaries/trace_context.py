"""What the run says of itself, as the argument about a trace needs it."""

from process.models import Cathode, Event, Run
from process.summaries.charge import sheet_lines
from process.summaries.hanging import hanging_at
from process.tracing import Context, Switching
from records import clock


def context_of(run: Run) -> Context:
    """Plan, begin, end and switching moments from the rows as they stand now."""
    readings, events = list(run.readings.all()), list(run.events.all())
    marks = {event.kind: event.at.timestamp() for event in events}
    area = _largest_dm2(list(run.cathodes.all()), events)
    return Context(
        planned_a=run.planned_current_density_a_dm2 * area or None,
        starts_s=marks.get(Event.Kind.ENTRY),
        stops_s=marks.get(Event.Kind.STOP),
        switchings=tuple(
            Switching(line.at.timestamp(), line.current_a > 0, getattr(line.row, "returned_by_itself", False))
            for line in sheet_lines(readings, events)
            if line.is_switching
        ),
        now_s=clock.now().timestamp(),
    )


def _largest_dm2(cathodes: list[Cathode], events: list[Event]) -> float:
    """The most that hung there at once: a current above what that takes is a spike, less is not."""
    entered = {Event.Kind.ENTRY, Event.Kind.HUNG_IN}
    rails = [hanging_at(cathodes, events, event.at) for event in events if event.kind in entered] or [cathodes]
    return max(sum(cathode.total_area_dm2 for cathode in rail) for rail in rails)
