"""What the run says of itself, as the argument about a trace needs it."""

from process.models import Event, Run
from process.summaries.charge import sheet_lines
from process.tracing import Context, Switching
from records import clock


def context_of(run: Run) -> Context:
    """Plan, begin, end and switching moments from the rows as they stand now."""
    readings, events = list(run.readings.all()), list(run.events.all())
    marks = {event.kind: event.at.timestamp() for event in events}
    area = sum(cathode.total_area_dm2 for cathode in run.cathodes.all())
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
